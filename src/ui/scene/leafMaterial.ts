/** Matt leaves: darker above than below, with paler veins and a fine drawn edge. */
import { DoubleSide, MeshLambertMaterial } from 'three';
import type { LeafSlice } from './leafSlice.ts';

/** Middle of a blade in its own frame, as for `pickTargets`. */
const bladeMiddle = [0.3, 0, 0] as const;

/** How far veins and the lower side are brought towards white, and how dark the blade is at its petiole. */
const veinPaleness = 0.34;
const lowerSidePaleness = 0.08;
const petioleShade = 0.86;
/** The drawn edge: its width as a share of the way from the petiole, and how dark it is. */
const edgeWidth = 0.045;
const edgeShade = 0.62;

/** For geometry from `makeLeafGeometry` with a number `faint` for each instance: 1 is drawn so that one can see through it. */
export function makeLeafMaterial(slice: LeafSlice): MeshLambertMaterial {
  const material = new MeshLambertMaterial({ side: DoubleSide });
  material.onBeforeCompile = (shader) => {
    shader.vertexShader = shader.vertexShader
      .replace(
        '#include <common>',
        '#include <common>\nattribute float edge;\nattribute float faint;\nvarying float vEdge;\nvarying float vFaint;',
      )
      .replace('#include <begin_vertex>', '#include <begin_vertex>\nvEdge = edge;\nvFaint = faint;');
    shader.fragmentShader = shader.fragmentShader
      .replace('#include <common>', '#include <common>\nvarying float vEdge;\nvarying float vFaint;')
      .replace(
        '#include <color_fragment>',
        `#include <color_fragment>
        // One pixel in four of a faint leaf is drawn, so that what stands behind it can be seen.
        if (vFaint > 0.5 && (mod(gl_FragCoord.x, 2.0) > 1.0 || mod(gl_FragCoord.y, 2.0) > 1.0)) discard;
        bool onVein = vEdge > 1.5;
        float paleness = (onVein ? ${veinPaleness} : 0.0) + (gl_FrontFacing ? 0.0 : ${lowerSidePaleness});
        float soft = fwidth(vEdge);
        float onEdge = onVein ? 0.0 : smoothstep(1.0 - ${edgeWidth} - soft, 1.0 - ${edgeWidth} + soft, vEdge);
        float shade = onVein ? 1.0 : mix(${petioleShade}, 1.0, min(1.0, 1.6 * vEdge));
        diffuseColor.rgb = mix(diffuseColor.rgb, vec3(0.8), paleness) * shade;
        // Dark leaves get a paler edge, pale ones a darker.
        float luminance = dot(diffuseColor.rgb, vec3(0.2126, 0.7152, 0.0722));
        vec3 edgeColour = luminance < 0.1 ? diffuseColor.rgb * 1.5 + 0.03 : diffuseColor.rgb * ${edgeShade};
        diffuseColor.rgb = mix(diffuseColor.rgb, edgeColour, onEdge);`,
      );
  };
  slice.applyTo(material, bladeMiddle);
  return material;
}

/** For petioles, cylinders about the origin. */
export function makePetioleMaterial(slice: LeafSlice): MeshLambertMaterial {
  const material = new MeshLambertMaterial();
  slice.applyTo(material, [0, 0, 0]);
  return material;
}
