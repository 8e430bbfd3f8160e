/** The tap's mesh, in the colours of how it was made. */

import { CUT, HEAD, LIGHT, MILLED, ONTO_CANVAS, TAP } from "./common.js";

export const BODY = [`${HEAD}
in vec3 place; in vec2 normal; in float kind;
uniform vec3 low, span;
${ONTO_CANVAS}
out vec3 own, world, facing; flat out int made;
void main() {
  own = low + place * span;
  vec3 n = vec3(normal, 1.0 - abs(normal.x) - abs(normal.y));
  if (n.z < 0.0) n.xy = (1.0 - abs(n.yx)) * vec2(n.x < 0.0 ? -1.0 : 1.0, n.y < 0.0 ? -1.0 : 1.0);
  world = inWorld(own);
  facing = turn * turnedBy(normalize(n));
  made = int(kind + 0.5);
  gl_Position = onCanvas(world);
}`, `${HEAD}
in vec3 own, world, facing; flat in int made;
uniform vec3 turnedColour, groundColour, plainColour, straw;
uniform float inMaking, generatedTo, frontRim;
${CUT}${LIGHT}${TAP}${MILLED}
out vec4 colour;
void main() {
  if (gone(world)) discard;
  vec3 q = vec3(own.x, own.y * hand, own.z);
  float r = length(q.xy);
  if (inMaking > 0.5) {
    if (made == 1 && offMilled(q) > 2e-3 * cutter.z) discard;
    if (made != 1 && q.z < generatedTo && !(made == 3 && r < 1.001 * frontRim)) discard;
  }
  vec3 base = made == 1 ? groundColour : made == 3 ? plainColour : turnedColour;
  float core = length(cutter.xy) - cutter.z, open = 1.0, warm = 0.0;
  float edgeRadius = min(crest.y, point + cone * q.z);
  float within = 1.0 - smoothstep(threadEnd - 0.5 * pitch, threadEnd + 0.5 * pitch, q.z);
  if (made == 0) {
    float sunk = clamp((crest.y - r) / (crest.y - root.y), 0.0, 1.0);
    open = 1.0 - 0.34 * sunk * within;
    float spacing = TURN / lands, behind = mod(atan(q.y, q.x) - wallAngle(r, 1.0), spacing);
    behind = behind > 0.97 * spacing ? 0.0 : behind;
    warm = exp(-pow(r * behind / (0.16 * crest.y), 1.3)) * within;
  } else if (made == 1) {
    vec3 f = inFlute(q);
    float sunk = clamp((crest.y - r) / (crest.y - core), 0.0, 1.0);
    open = 1.0 - 0.40 * sunk * sunk * (1.0 - smoothstep(fullDepth, fullDepth + cutter.z, q.z));
    float beside = smoothstep(0.0, 0.3 * cutter.z, f.y - cutter.y);
    warm = beside * exp(-pow(max(edgeRadius - r, 0.0) / (0.15 * crest.y), 1.3)) * within;
  }
  vec3 n = normalize(facing);
  base = mix(base, straw, 0.95 * warm * (1.0 - inMaking));
  colour = vec4(lit(n, base, open, made == 1 ? 1.0 : 0.8), 1.0);
}`];

/** Counts fronts and backs on the kept side of one plane, whose cut is where they differ. */
export const COUNTED = [`${HEAD}
in vec3 place;
uniform vec3 low, span;
${ONTO_CANVAS}
out vec3 world;
void main() { world = inWorld(low + place * span); gl_Position = onCanvas(world); }`, `${HEAD}
in vec3 world;
uniform vec4 plane;
out vec4 colour;
void main() { if (dot(world, plane.xyz) > plane.w) discard; colour = vec4(0.0); }`];

/** The cut itself, hatched. */
export const CAP = [`${HEAD}
in vec2 corner;
uniform vec3 across, up, origin; uniform float reach;
${ONTO_CANVAS}
out vec3 world; out vec2 flatPlace;
void main() {
  flatPlace = corner * reach;
  world = origin + across * flatPlace.x + up * flatPlace.y;
  gl_Position = onCanvas(world);
}`, `${HEAD}
in vec3 world; in vec2 flatPlace;
uniform vec4 plane; uniform vec3 capColour, facing; uniform float spacing, whichNumber;
#define which int(whichNumber + 0.5)
${CUT}${LIGHT}
out vec4 colour;
void main() {
  if (which > 0 && world.z < cut) discard;
  if (which == 0 && dot(world.xy, quarterA) > 0.0 && dot(world.xy, quarterB) > 0.0) discard;
  if (which == 1 && dot(world.xy, quarterB) <= 0.0) discard;
  if (which == 2 && dot(world.xy, quarterA) <= 0.0) discard;
  float line = (flatPlace.x + flatPlace.y) / spacing, wide = fwidth(line);
  float away = abs(fract(line) - 0.5);
  float ink = 1.0 - smoothstep(0.25 * wide, 0.85 * wide, away);
  vec3 base = mix(capColour, lit(normalize(facing), capColour, 1.0, 0.0), 0.4);
  colour = vec4(mix(base, base * 0.45, 0.7 * ink), 1.0);
}`];
