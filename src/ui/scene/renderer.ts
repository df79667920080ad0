/** What this browser can draw with. */

export type RendererKind = 'none' | 'software' | 'hardware';

/** Names that renderers without a graphics card give themselves. */
const softwareNames = /swiftshader|llvmpipe|softpipe|software|basic render/i;

/** Whether a renderer with this name computes its pictures without a graphics card. */
export const isSoftware = (rendererName: string): boolean => softwareNames.test(rendererName);

let known: RendererKind | null = null;

/** Looks once, with a canvas of its own that it gives back. */
export function rendererKind(): RendererKind {
  if (known !== null) return known;
  const gl = document.createElement('canvas').getContext('webgl2');
  if (gl === null) {
    known = 'none';
    return known;
  }
  const named = gl.getExtension('WEBGL_debug_renderer_info');
  const name = String(gl.getParameter(named === null ? gl.RENDERER : named.UNMASKED_RENDERER_WEBGL));
  gl.getExtension('WEBGL_lose_context')?.loseContext();
  known = isSoftware(name) ? 'software' : 'hardware';
  return known;
}
