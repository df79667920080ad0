/** Where cuts and marks sit on the wood that is drawn, buds that have not grown included. */
import type { TreeFile } from '../../document/treeFile.ts';
import type { Canopy } from '../../growth/canopy.ts';
import { budMark, type CutPlace, cutMark, type Marked } from '../scene/cutMark.ts';
import { dormantBuds } from '../scene/dormantBuds.ts';

/** Those whose wood is drawn, in their order. */
export function placeMarks<Mark extends Marked & { readonly text: string }>(
  file: TreeFile,
  canopy: Canopy,
  marks: readonly Mark[],
): (CutPlace & { readonly mark: Mark })[] {
  const buds = new Map(dormantBuds(file, canopy).map((bud) => [bud.id, bud]));
  return marks.flatMap((mark) => {
    const bud = buds.get(mark.target);
    const place = bud === undefined ? cutMark(canopy, mark, mark.text) : budMark(bud, mark, mark.text);
    return place === null ? [] : [{ ...place, mark }];
  });
}
