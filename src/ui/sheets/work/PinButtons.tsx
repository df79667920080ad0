/** Keep this, take that off: the grower's word, which the plan obeys. Pressed again it is taken back. */
import { type PinChoice, partOf, pinPart } from '../../../editor/edits/pin.ts';
import { useFile, useWorkbench } from '../../state/workbench.ts';
import { pinWords as words } from './pinWords.ts';

export function PinButtons({ id }: { readonly id: string }) {
  const { editor } = useWorkbench();
  const file = useFile();
  const part = partOf(file, id);
  if (part === null) return null;
  const { pin, isBud } = part;
  const isTrunk = file.axes.some((axis) => axis.id === id && axis.parentId === null);
  const mark = (to: PinChoice) => editor.make((now) => pinPart(now, id, pin === to ? null : to));
  const choices = isTrunk ? (['keep'] as const) : (['keep', 'remove'] as const);
  return choices.map((to) => (
    <button
      key={to}
      type="button"
      className="button is-small is-pin"
      aria-pressed={pin === to}
      title={words.help[to]}
      onClick={() => mark(to)}
    >
      {words.mark(to, isBud)}
    </button>
  ));
}
