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

# Largest chord between the mesh and the solid [mm]: half of what a good lathe holds. Finer threads
# take 2.5 % of their pitch, so that no triangle hides a tooth, thinner taps 0.1 % of their
# diameter, so that a land is more than two or three facets.
MESH_CHORD = 0.005
MESH_CHORD_PITCHES = 0.025
MESH_CHORD_DIAMETERS = 0.001

# Parts of a STEP file read back from those of the solid [mm]: it keeps eight decimals, which put
# no part off by more than 1e-8.
STEP_PART = 2e-8

# Volume of a file of triangles read back against the mesh, relative: STL keeps 7 digits.
STL_VOLUME = 1e-5

# A STEP file from elsewhere against the design: volume and sections, relative, and faces [mm]. Most
# programs hand surfaces on as they are. A length wrong by 1 µm moves a flank of a steep thread by
# 1.3e-4, and must not pass; a program that fits surfaces anew more coarsely is told so.
FOREIGN_VOLUME = 1e-5
FOREIGN_SECTION = 1e-5
FOREIGN_FACE = 1e-4


def mesh_chord(pitch: float, major: float) -> float:
    """Chord of the mesh of a tap of that pitch and diameter over the crests, all [mm].

    Source: rule of this program.
    """
    return min(MESH_CHORD, MESH_CHORD_PITCHES * pitch, MESH_CHORD_DIAMETERS * major)
