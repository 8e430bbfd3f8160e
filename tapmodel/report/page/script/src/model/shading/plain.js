/** Simple shapes of one colour, and chips. */

import { HEAD, LIGHT, ONTO_CANVAS } from "./common.js";

export const PLAIN = [`${HEAD}
in vec3 place, normal;
uniform float hand;
${ONTO_CANVAS}
out vec3 facing;
void main() {
  facing = turn * turnedBy(vec3(normal.x, normal.y * hand, normal.z));
  gl_Position = onCanvas(inWorld(vec3(place.x, place.y * hand, place.z)));
}`, `${HEAD}
in vec3 facing;
uniform vec3 surface; uniform float polish;
${LIGHT}
out vec4 colour;
void main() { colour = vec4(lit(normalize(facing), surface, 1.0, polish), 1.0); }`];

export const CHIPS = [`${HEAD}
in vec3 place, normal; in vec3 told; // height of the tooth, place along the chip, thickness from 0 to 1
uniform float hand, entered, longest, bottom;
${ONTO_CANVAS}
out vec3 facing; out float beyond; out float tone;
void main() {
  facing = turn * turnedBy(vec3(normal.x, normal.y * hand, normal.z));
  vec3 world = inWorld(vec3(place.x, place.y * hand, place.z));
  // It grows while its tooth is in the work.
  float way = entered - told.x;
  beyond = told.y - clamp(way / longest, 0.0, 1.0);
  beyond = way > bottom ? 1.0 : beyond;
  tone = told.z;
  gl_Position = onCanvas(world);
}`, `${HEAD}
in vec3 facing; in float beyond, tone;
uniform vec3 thin, thick;
${LIGHT}
out vec4 colour;
void main() {
  if (beyond > 0.0) discard;
  vec3 n = normalize(facing);
  n = n.z < 0.0 ? -n : n;
  colour = vec4(lit(n, mix(thin, thick, tone), 1.0, 0.7), 1.0);
}`];
