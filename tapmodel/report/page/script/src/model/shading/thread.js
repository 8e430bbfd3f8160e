/** Threaded surfaces that no mesh holds: the work's bore as it is cut, the blank before its flutes. */

import { HEAD, LIGHT, MILLED, ONTO_CANVAS, TAP } from "./common.js";

/** How far the block of the work reaches behind the axis, of half its width. */
export const BACK = 0.72;

export const BORE = 0, CUT_FACE = 1, FACE = 2, BLANK = 3, BLANK_FRONT = 4;

const SURFACES = `
uniform float partNumber, frontRim;
#define part int(partNumber + 0.5)
uniform vec4 hole; // radius of the drill, depth of it, of the block, half of the block's width
uniform float entered, blind; uniform vec4 crestBefore, rootBefore;
uniform vec4 corners[3]; // height and radius of two corners each of the blank behind the thread
uniform float advance; // of the helix [mm/rad]
float helix(float theta) { return firstZ + advance * theta; }
// Since when an edge has passed, as an angle, at a point of the work.
float sincePassed(float theta) {
  float spacing = TURN / lands;
  return mod(theta + entered / advance - edge, spacing);
}
float bore(float theta, float z, float since) {
  // Below it the point of a drill, of 118 degrees: tan 59.
  if (blind > 0.5 && z < -hole.y) return max(hole.x - (-hole.y - z) * 1.664, 0.0);
  float w = z - helix(theta), found = hole.x;
  if (crestBefore.y > 0.0) found = max(found, profileOf(crestBefore, rootBefore, w));
  float passed = z + entered - advance * since;
  if (passed >= 0.0) found = max(found, min(profileOf(crest, root, w), point + cone * passed));
  return found;
}
float blank(float theta, float z) {
  if (z < threadEnd) return min(profileOf(crest, root, z - helix(theta)), point + cone * z);
  vec2 from = corners[0].xy;
  for (int n = 1; n < 6; n++) {
    vec2 to = n % 2 == 1 ? corners[n / 2].zw : corners[n / 2].xy;
    if (z <= to.x) return to.x > from.x ? mix(from.y, to.y, (z - from.x) / (to.x - from.x)) : to.y;
    from = to;
  }
  return from.y;
}
`;

export const THREAD = [`${HEAD}
in vec4 grid; // angle, height, whether it rides on the helix, share of the way outwards
${ONTO_CANVAS}${TAP}${SURFACES}
out vec3 world, own; out vec2 at; out float share;
void main() {
  float theta = grid.x, z = grid.y;
  if (grid.z > 0.5) {
    z += helix(theta);
    z = part == ${BLANK} ? clamp(z, 0.0, threadEnd) : clamp(z, -hole.z, 0.0);
  }
  at = vec2(theta, z);
  share = grid.w;
  float r;
  if (part >= ${BLANK}) r = part == ${BLANK} ? blank(theta, z) : mix(frontRim, blank(theta, 0.0), share);
  else {
    r = bore(theta, z, sincePassed(theta));
    float outer = min(hole.w / max(abs(cos(theta)), 1e-6), ${BACK} * hole.w / max(abs(sin(theta)), 1e-6));
    if (part == ${CUT_FACE} || part == ${FACE}) r = mix(r, outer, share);
  }
  own = vec3(r * cos(theta), r * sin(theta), z);
  world = inWorld(vec3(own.x, own.y * hand, own.z));
  gl_Position = onCanvas(world);
}`, `${HEAD}
in vec3 world, own; in vec2 at; in float share;
uniform mat3 turn; uniform vec2 spin; uniform vec3 surface; uniform float spacing, inMaking;
${LIGHT}${TAP}${MILLED}${SURFACES}
out vec4 colour;
vec3 axial(float theta, vec3 n) {
  vec3 v = vec3(n.x * cos(theta) - n.y * sin(theta), n.x * sin(theta) + n.y * cos(theta), n.z);
  v.y *= hand;
  return turn * vec3(spin.x * v.x - spin.y * v.y, spin.y * v.x + spin.x * v.y, v.z);
}
void main() {
  vec3 base = surface;
  float open = 1.0, step_ = 1e-3 * pitch;
  vec3 n = vec3(0.0, 0.0, 1.0);
  if (part == ${BORE}) {
    float since = sincePassed(at.x), r = bore(at.x, at.y, since), turned_ = step_ / max(r, step_);
    float round_ = bore(at.x + turned_, at.y, since + turned_) - bore(at.x - turned_, at.y, since - turned_);
    float up = bore(at.x, at.y + step_, since) - bore(at.x, at.y - step_, since);
    n = axial(at.x, normalize(vec3(-1.0, 0.5 * round_ / step_, 0.5 * up / step_)));
    float cutIn = clamp((r - hole.x) / max(crest.y - hole.x, 1e-6), 0.0, 1.0);
    open = 0.62;
    base = mix(base, vec3(0.88, 0.87, 0.84), step(1e-4, r - hole.x) * 0.75);
    open -= 0.15 * cutIn;
  } else if (part == ${CUT_FACE}) {
    n = turn * vec3(0.0, -1.0, 0.0);
    float line = (own.x + at.y) / spacing, wide = fwidth(line);
    float ink = 1.0 - smoothstep(0.25 * wide, 0.85 * wide, abs(fract(line) - 0.5));
    vec3 seen = mix(base, lit(normalize(n), base, 1.0, 0.0), 0.4);
    colour = vec4(mix(seen, seen * 0.5, 0.7 * ink), 1.0);
    return;
  } else if (part == ${FACE}) {
    n = turn * vec3(0.0, 0.0, at.y > -1e-6 ? 1.0 : -1.0);
  } else {
    if (offMilled(own) < -1e-3 * cutter.z) discard;
    if (part == ${BLANK}) {
      float r = blank(at.x, at.y), turned_ = step_ / r;
      float round_ = blank(at.x + turned_, at.y) - blank(at.x - turned_, at.y);
      float up = blank(at.x, at.y + step_) - blank(at.x, at.y - step_);
      n = axial(at.x, normalize(vec3(1.0, -0.5 * round_ / step_, -0.5 * up / step_)));
      float sunk = clamp((crest.y - r) / (crest.y - root.y), 0.0, 1.0);
      open = at.y < threadEnd ? 1.0 - 0.34 * sunk : 1.0;
    } else n = turn * vec3(0.0, 0.0, -1.0);
  }
  colour = vec4(lit(normalize(n), base, open, part == ${CUT_FACE} ? 0.1 : 0.7), 1.0);
}`];
