/** Edges as thin bands with soft borders. */

import { CUT, HEAD, ONTO_CANVAS } from "./common.js";

export const LINES = [`${HEAD}
in vec2 corner; in vec3 first, last;
uniform vec3 low, span; uniform vec2 pixel; uniform float wide, nearer;
${ONTO_CANVAS}
out vec3 world; out float aside;
void main() {
  vec3 a = inWorld(low + first * span), b = inWorld(low + last * span);
  vec4 from = onCanvas(a), to = onCanvas(b);
  vec2 way = (to.xy - from.xy) / pixel;
  float long_ = length(way);
  vec2 along = long_ > 1e-6 ? way / long_ : vec2(1.0, 0.0);
  world = mix(a, b, corner.x);
  aside = corner.y * (wide + 1.0);
  vec2 moved_ = vec2(-along.y, along.x) * aside + along * (corner.x - 0.5) * 0.5;
  gl_Position = mix(from, to, corner.x);
  gl_Position.xy += moved_ * pixel;
  gl_Position.z -= nearer;
}`, `${HEAD}
in vec3 world; in float aside;
uniform vec4 ink; uniform float wide;
${CUT}
out vec4 colour;
void main() {
  if (gone(world)) discard;
  float seen = 1.0 - smoothstep(wide - 0.5, wide + 1.0, abs(aside));
  colour = vec4(ink.rgb, 1.0) * ink.a * seen;
}`];
