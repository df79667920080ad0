/** A number with its unit. It takes comma and point, and tells the page only when the entry is finished. */
import { type KeyboardEvent, useId, useState } from 'react';
import { useUnits } from '../state/workbench.ts';
import type { Quantity } from './quantities.ts';

interface NumberFieldProps {
  readonly label: string;
  /** Metres, degrees or a count, as the quantity says. */
  readonly value: number;
  readonly quantity: Quantity;
  readonly onCommit: (value: number) => void;
  readonly disabled?: boolean;
  /** Label and unit are heard but not seen: the head of a table says them. */
  readonly isBare?: boolean;
  readonly note?: string;
}

export function NumberField(props: NumberFieldProps) {
  const { label, value, quantity, onCommit, disabled = false, isBare = false, note } = props;
  const units = useUnits();
  const shown = quantity.write(value, units);
  const [typed, setTyped] = useState<string | null>(null);
  const [isUnread, setUnread] = useState(false);
  const id = useId();

  const commit = () => {
    if (typed === null || typed.trim() === shown) {
      setTyped(null);
      setUnread(false);
      return;
    }
    const read = quantity.read(typed, units);
    setUnread(read === null);
    if (read === null) return;
    setTyped(null);
    onCommit(read);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Enter') commit();
    if (event.key === 'Escape' && typed !== null) {
      event.stopPropagation();
      setTyped(null);
      setUnread(false);
    }
  };

  const unit = quantity.unit(units);
  return (
    <div className="field is-number">
      <label htmlFor={id} className={isBare ? 'unseen' : 'field-label'}>
        {label}
        {unit === '' ? null : <span className="unseen">, {quantity.unitInFull(units)}</span>}
      </label>
      <span className="field-entry">
        <input
          id={id}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          value={typed ?? shown}
          disabled={disabled}
          aria-invalid={isUnread}
          aria-describedby={isUnread || note !== undefined ? `${id}-note` : undefined}
          onChange={(event) => setTyped(event.target.value)}
          onBlur={commit}
          onKeyDown={onKeyDown}
        />
        {unit === '' || isBare ? null : (
          <span className="field-unit" aria-hidden="true">
            {unit}
          </span>
        )}
      </span>
      {isUnread ? (
        <span id={`${id}-note`} className="field-note is-wrong" role="alert">
          Not a number. Write it as 12.5 or 12,5.
        </span>
      ) : note === undefined ? null : (
        <span id={`${id}-note`} className="field-note">
          {note}
        </span>
      )}
    </div>
  );
}
