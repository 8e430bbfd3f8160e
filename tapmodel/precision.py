"""Every closeness by name, with the reason for its size."""

# Volume of the model against the quadrature of its definition, relative. Both are good to some
# 1e-7; a missing tooth of the finest tap moves the volume by more than 1e-4.
VOLUME = 1e-5

# Section area at one height against the quadrature, relative.
SECTION_AREA = 1e-5

# Points of the model's faces from the surfaces that the record defines [mm]. The faces follow
# them within 1e-8; one per cent of the smallest relief anyone grinds is 2e-4.
THREAD_FACE = 5e-5
ANY_FACE = 1e-4

# Default chord between the mesh and the solid [mm]: half of what a good lathe holds.
MESH_CHORD = 0.005

# Parts of a STEP file read back from those of the solid [mm]: it keeps eight decimals, which put
# no part off by more than 1e-8.
STEP_PART = 2e-8

# Volume of a file of triangles read back against the mesh, relative: STL keeps 7 digits.
STL_VOLUME = 1e-5

# A STEP file from elsewhere against the design: volume, relative, and faces [mm]. Other programs
# fit surfaces anew, some to a micrometre.
FOREIGN_VOLUME = 1e-5
FOREIGN_FACE = 1e-3
