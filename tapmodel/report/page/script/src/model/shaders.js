/** Programs of the graphics card: vertex, then fragment. */

export const FACES = [`#version 300 es
in vec3 place; in vec3 normal;
uniform mat3 turn; uniform vec3 low, span, middle; uniform vec2 scale, shift; uniform float deep;
out vec3 facing; out float height;
void main() {
  vec3 at = low + place * span;
  height = at.z;
  vec3 seen = turn * (at - middle);
  facing = turn * normal;
  gl_Position = vec4(seen.xy * scale + shift, -seen.z * deep, 1.0);
}`, `#version 300 es
precision highp float;
in vec3 facing; in float height;
uniform float cut; uniform vec3 inside;
out vec4 colour;
void main() {
  if (height < cut) discard;
  // The inside of the shell, in one colour, stands for the cut face.
  if (!gl_FrontFacing) { colour = vec4(inside, 1.0); return; }
  vec3 n = normalize(facing);
  float key = max(dot(n, normalize(vec3(-0.4, 0.6, 0.7))), 0.0);
  float fill = max(dot(n, normalize(vec3(0.7, -0.2, 0.5))), 0.0);
  float gleam = pow(max(dot(n, normalize(vec3(-0.2, 0.35, 0.9))), 0.0), 30.0);
  colour = vec4(vec3(0.80, 0.83, 0.86) * (0.24 + 0.58 * key + 0.22 * fill) + 0.10 * gleam, 1.0);
}`];

export const LINES = [`#version 300 es
in vec3 place;
uniform mat3 turn; uniform vec3 low, span, middle; uniform vec2 scale, shift; uniform float deep;
out float height;
void main() {
  vec3 at = low + place * span;
  height = at.z;
  vec3 seen = turn * (at - middle);
  gl_Position = vec4(seen.xy * scale + shift, -seen.z * deep - 0.0006, 1.0);
}`, `#version 300 es
precision highp float;
in float height;
uniform float cut; uniform vec3 ink;
out vec4 colour;
void main() { if (height < cut) discard; colour = vec4(ink, 1.0); }`];
