"""The tones of a tap, painted pixel by pixel: they follow from where a point lies on the tap.

So their borders are sharp and their gradients even whatever the triangles of a mesh are, the
flutes are round where a mesh has chords, and nothing is to be worked out before the picture.
"""

# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false, reportMissingTypeStubs=false, reportMissingImports=false
# The renderer's binding carries no usable types; only its own names are let off.

import math

from vtkmodules.vtkRenderingCore import vtkActor, vtkPolyDataMapper, vtkShaderProperty

from tapmodel.report.pictures.look import (
    GROUND,
    IN_FLUTE,
    IN_ROOT,
    STEEL,
    STRAW,
    STRAW_BEHIND,
    STRAW_ON_FACE,
    STRAW_ON_LAND,
)
from tapmodel.report.pictures.tones import Tones

_NO_SHIFT = 0  # the renderer's number for: places as they are [mm]
_FLUTES, _TURNED = "flutes", "turned"

# `place` is a point of the tap in the record's frame [mm], `nearest` its distance from a cutter's
# surface, off which the chords of a mesh lie up to a hundredth of its radius.
_PAINT = """\
//VTK::Color::Impl
  bool cut = false;
  vec3 outward = vec3(0.0);
  vec3 tone = STEEL;
  // a loop, for what it leaves out costs nothing: behind the flutes all is steel
  int looks = place.z < stop + cutter.x ? flutes : 0;
  for (int look = 0; look < looks; look++) {
    vec3 p = vec3(place.x, hand * place.y, place.z);
    float r = length(p.xy);
    float a = atan(p.y, p.x);
    float f = a - sector * floor(a / sector + 0.5);
    vec2 ut = r * vec2(cos(f), sin(f));
    // of the flute's own frame, in that of the tap
    vec2 axis = vec2(p.x * ut.x + p.y * ut.y, p.y * ut.x - p.x * ut.y) / (r * r);
    float behind = max(p.z - stop, 0.0);
    vec3 from = vec3(min(ut.x - cutter.z, 0.0), ut.y - cutter.y, behind);
    // the flute beside may be nearer
    float turn = f > 0.0 ? -1.0 : 1.0;
    vec2 other = vec2(ut.x * turned.x - turn * ut.y * turned.y,
                      turn * ut.x * turned.y + ut.y * turned.x);
    vec3 from_other = vec3(min(other.x - cutter.z, 0.0), other.y - cutter.y, behind);
    float nearest = abs(length(from) - cutter.x);
    float nearest_other = abs(length(from_other) - cutter.x);
    if (nearest_other < nearest) {
      nearest = nearest_other;
      from = from_other;
      axis = vec2(axis.x * turned.x + turn * axis.y * turned.y,
                  axis.y * turned.x - turn * axis.x * turned.y);
    }
    outward = normalMatrix * vec3(-axis.x * from.x + axis.y * from.y,
                                  -hand * (axis.y * from.x + axis.x * from.y), -from.z);
    // the tops of lands come as near to the cutter at their edges, but look elsewhere
    float along = abs(dot(normalize(outward), normalize(normalVCVSOutput)));
    bool body = p.z > 0.0005 * crest;
    cut = along > 0.8 && nearest < CHORD * cutter.x && body;
    float front = mix(1.0, BEHIND, clamp(p.z / end, 0.0, 1.0)) * (p.z < end ? 1.0 : 0.0);
    float top = min(crest, point + slope * p.z);
    float deep = smoothstep(core, crest, r);
    float below = smoothstep(0.0, ON_FACE * (crest - root), top - r);
    vec3 bright = mix(GROUND, STRAW, from.y > 0.0 ? front * (1.0 - below) : 0.0);
    float phi = mod(a - edge, sector);
    // what lies before the edge, for the cutting face hooks, is at the edge
    phi = phi > 0.5 * (land + sector) ? 0.0 : phi;
    vec3 dull = mix(STEEL, STRAW, front * (1.0 - smoothstep(0.0, ON_LAND * land, phi)));
    float high = clamp((r - root) / max(top - root, 0.02 * crest), 0.0, 1.0);
    dull *= p.z < end ? mix(IN_ROOT, 1.0, high) : 1.0;
    bool plain = !body || (p.z < 2.0 * root && r < 0.6 * root);
    tone = cut ? mix(IN_FLUTE, 1.0, deep) * bright : plain ? STEEL : dull;
    looks = 0;
  }
  ambientColor *= tone;
  diffuseColor *= tone;
"""

_DECLARED = "//VTK::Color::Dec\nin vec3 place;\n"

# Flutes have the normal of the cutter itself, not that of a mesh's chords.
_ROUND = """\
//VTK::Normal::Impl
  if (cut) { normalVCVSOutput = normalize(outward); }
"""

# No pixel of the tap is as white as the paper, nor as dark as lines are.
_SHADE = """\
//VTK::Light::Impl
  fragOutput0.rgb = min(sqrt(fragOutput0.rgb * fragOutput0.rgb + 0.0625), vec3(0.985));
"""


def painted(actor: vtkActor, mapper: vtkPolyDataMapper) -> None:
    """Make a body ready for tones; `set_tones` says whose."""
    mapper.SetVBOShiftScaleMethod(_NO_SHIFT)
    shader = actor.GetShaderProperty()
    shader.AddVertexShaderReplacement(
        "//VTK::PositionVC::Dec", True, "//VTK::PositionVC::Dec\nout vec3 place;\n", False
    )
    shader.AddVertexShaderReplacement(
        "//VTK::PositionVC::Impl", True, "//VTK::PositionVC::Impl\n  place = vertexMC.xyz;\n", False
    )
    shader.AddFragmentShaderReplacement("//VTK::Color::Dec", True, _DECLARED, False)
    shader.AddFragmentShaderReplacement("//VTK::Color::Impl", True, _with_look(_PAINT), False)
    shader.AddFragmentShaderReplacement("//VTK::Normal::Impl", True, _ROUND, False)
    shader.AddFragmentShaderReplacement("//VTK::Light::Impl", True, _SHADE, False)
    set_tones(shader, None)


def _with_look(text: str) -> str:
    colours = {"STEEL": STEEL, "GROUND": GROUND, "STRAW": STRAW}
    words = {name: f"vec3({r:.4f}, {g:.4f}, {b:.4f})" for name, (r, g, b) in colours.items()}
    shares = {"IN_FLUTE": IN_FLUTE, "IN_ROOT": IN_ROOT, "ON_FACE": STRAW_ON_FACE}
    shares |= {"ON_LAND": STRAW_ON_LAND, "BEHIND": STRAW_BEHIND, "CHORD": 0.01}
    words |= {name: f"{share:.4f}" for name, share in shares.items()}
    for name, value in words.items():
        text = text.replace(name, value)
    return text


def set_tones(shader: vtkShaderProperty, tones: Tones | None) -> None:
    """Whose tones a body has; None for plain steel."""
    uniforms, asked = shader.GetFragmentCustomUniforms(), tones or _NOBODY
    uniforms.SetUniformi(_FLUTES, 1 if tones else 0)
    uniforms.SetUniform3f("cutter", asked.cutter)
    turn = math.radians(asked.sector)
    uniforms.SetUniform2f(_TURNED, (math.cos(turn), math.sin(turn)))
    for name in ("sector", "edge", "land"):
        uniforms.SetUniformf(name, math.radians(getattr(asked, name)))
    for name in ("hand", "stop", "crest", "root", "core", "point", "slope", "end"):
        uniforms.SetUniformf(name, getattr(asked, name))


_NOBODY = Tones(1.0, 1.0, 0.0, 1.0, (1.0, 0.0, 0.0), -2.0, 2.0, 1.0, 0.0, 1.0, 1.0, 1.0)
