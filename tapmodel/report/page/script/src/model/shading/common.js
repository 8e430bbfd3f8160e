/** What several programs of the graphics card share. */

export const HEAD = `#version 300 es
precision highp float;
precision highp int;
`;

/** A point of a part on the canvas: the part is turned by `spin` about the axis, then moved. */
export const ONTO_CANVAS = `
uniform mat3 turn; uniform vec3 middle, moved; uniform vec2 scale, shift, spin; uniform float deep;
vec3 turnedBy(vec3 v) { return vec3(spin.x * v.x - spin.y * v.y, spin.y * v.x + spin.x * v.y, v.z); }
vec3 inWorld(vec3 p) { return turnedBy(p) + moved; }
vec4 onCanvas(vec3 p) {
  vec3 seen = turn * (p - middle);
  return vec4(seen.xy * scale + shift, -seen.z * deep, 1.0);
}
`;

/** Whether a point of the world is cut away: in front of the section, or in the quarter. */
export const CUT = `
uniform float cut; uniform vec2 quarterA, quarterB;
bool gone(vec3 p) {
  return p.z < cut || (dot(p.xy, quarterA) > 0.0 && dot(p.xy, quarterB) > 0.0);
}
`;

/** Light on steel: two lamps, sky and floor, and a soft band that bright metal mirrors. */
export const LIGHT = `
uniform vec3 key, fill, sky, ground; uniform float keyStrength, fillStrength, gleam, sharpness;
vec3 linear(vec3 c) { return pow(c, vec3(2.2)); }
vec3 lit(vec3 n, vec3 colour, float open, float polish) {
  vec3 base = linear(colour);
  vec3 around = mix(linear(ground), linear(sky), 0.5 + 0.5 * n.y);
  float first = max(dot(n, key), 0.0), second = max(dot(n, fill), 0.0);
  float high = pow(max(dot(n, normalize(key + vec3(0.0, 0.0, 1.0))), 0.0), sharpness);
  float low = pow(max(dot(n, normalize(fill + vec3(0.0, 0.0, 1.0))), 0.0), 0.5 * sharpness);
  float mirrored = reflect(vec3(0.0, 0.0, -1.0), n).y;
  float band = smoothstep(-0.35, 0.75, mirrored) - 0.55 * smoothstep(0.80, 1.0, mirrored);
  vec3 out_ = base * (around * open * 1.05 + (keyStrength * first + fillStrength * second) * mix(open, 1.0, 0.35));
  out_ += polish * open * mix(vec3(1.0), base * 1.6, 0.5) * (gleam * high + 0.3 * gleam * low + 0.16 * band);
  out_ = out_ / (1.0 + 0.22 * out_);
  return pow(out_, vec3(1.0 / 2.2));
}
`;

/** A tap's surfaces in its right-hand frame. */
export const TAP = `
const float TURN = 6.283185307179586;
uniform float pitch, lead, firstZ, edge, lands, hand, point, cone, threadEnd, fullDepth;
uniform vec3 cutter; // outwards, along +theta, radius of the ball
uniform vec4 crest, root; // half, radius, arc, its centre
float onFlat(vec4 f, float away) {
  return f.z == 0.0 ? f.y : f.w + sign(f.z) * sqrt(max(f.z * f.z - away * away, 0.0));
}
float profileOf(vec4 top, vec4 low, float w) {
  float away = abs(w - pitch * round(w / pitch)), begin = 0.5 * pitch - low.x;
  if (away < top.x) return onFlat(top, away);
  if (away > begin) return onFlat(low, 0.5 * pitch - away);
  return mix(top.y, low.y, (away - top.x) / (begin - top.x));
}
// Angle of a wall of the first flute at a radius: side 1 the cutting face, -1 the heel.
float wallAngle(float r, float side) {
  float across = cutter.y + side * cutter.z, long_ = length(cutter.xy);
  if (r >= length(vec2(cutter.x, across))) return asin(clamp(across / r, -1.0, 1.0));
  float overlap = (cutter.z * cutter.z - (long_ - r) * (long_ - r)) / (4.0 * r * long_);
  return atan(cutter.y, cutter.x) + side * 2.0 * asin(sqrt(clamp(overlap, 0.0, 1.0)));
}
// A point in the frame of the nearest flute: outwards, along +theta, and the flute's number.
vec3 inFlute(vec3 q) {
  float r = max(length(q.xy), length(cutter.xy) - cutter.z + 1e-4);
  float middle = 0.5 * (wallAngle(r, 1.0) + wallAngle(r, -1.0));
  float number = round((atan(q.y, q.x) - middle) * lands / TURN);
  float turned = number * TURN / lands, c = cos(turned), s = sin(turned);
  return vec3(q.x * c + q.y * s, q.y * c - q.x * s, mod(number + lands, lands));
}
`;

/** How far the flutes are milled: so many whole ones, and the next one as far as the cutter came. */
export const MILLED = `
uniform float flutesDone, cutterAt;
float reachedIn(float flute) {
  return flute < flutesDone - 0.5 ? fullDepth : flute < flutesDone + 0.5 ? min(cutterAt, fullDepth) : -1e6;
}
// How far a point lies outside what the cutter has taken off in its flute; negative within.
float offMilled(vec3 q) {
  vec3 f = inFlute(q);
  vec3 way = vec3(max(cutter.x - f.x, 0.0), cutter.y - f.y, max(q.z - reachedIn(f.z), 0.0));
  return f.x < 0.0 ? 1.0 : length(way) - cutter.z;
}
`;
