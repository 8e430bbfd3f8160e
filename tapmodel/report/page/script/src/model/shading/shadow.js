/** The soft shadow on a table below what is shown. */

import { HEAD } from "./common.js";

/** Near the table darkest, less the higher; the darkest stays. */
export const CAST = [`${HEAD}
in vec3 place;
uniform vec3 low, span, middle, moved, tableX, tableY, tableUp; uniform vec2 spin, mid, half_;
uniform float height, fade;
out float above; out float axial;
void main() {
  vec3 p = low + place * span;
  axial = p.z;
  vec3 q = vec3(spin.x * p.x - spin.y * p.y, spin.y * p.x + spin.x * p.y, p.z) + moved - middle;
  above = (dot(q, tableUp) - height) / fade;
  gl_Position = vec4((vec2(dot(q, tableX), dot(q, tableY)) - mid) / half_, 0.0, 1.0);
}`, `${HEAD}
in float above, axial; uniform float cut;
out vec4 colour;
void main() { if (axial < cut) discard; colour = vec4(exp(-2.2 * max(above, 0.0))); }`];

export const BLUR = [`${HEAD}
in vec2 corner; out vec2 at;
void main() { at = corner * 0.5 + 0.5; gl_Position = vec4(corner, 0.0, 1.0); }`, `${HEAD}
in vec2 at; uniform sampler2D picture; uniform vec2 way;
out vec4 colour;
void main() {
  float sum = 0.0, all = 0.0;
  for (int n = -9; n <= 9; n++) {
    float weight = exp(-float(n * n) / 32.0);
    sum += weight * texture(picture, at + way * float(n)).r;
    all += weight;
  }
  colour = vec4(sum / all);
}`];

export const TABLE = [`${HEAD}
in vec2 corner;
uniform mat3 turn; uniform vec3 tableX, tableY, tableUp; uniform vec2 scale, shift, mid, half_;
uniform float height;
out vec2 at;
void main() {
  at = corner * 0.5 + 0.5;
  vec2 flat_ = mid + corner * half_;
  vec3 seen = turn * (tableX * flat_.x + tableY * flat_.y + tableUp * height);
  gl_Position = vec4(seen.xy * scale + shift, 0.0, 1.0);
}`, `${HEAD}
in vec2 at; uniform sampler2D picture; uniform float strength;
out vec4 colour;
void main() {
  vec2 border = smoothstep(vec2(0.0), vec2(0.06), at) * smoothstep(vec2(0.0), vec2(0.06), 1.0 - at);
  colour = vec4(0.0, 0.0, 0.0, strength * texture(picture, at).r * border.x * border.y);
}`];
