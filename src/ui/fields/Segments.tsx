/** One of a few, side by side. */
import { useId } from 'react';

interface SegmentsProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly options: readonly { readonly value: T; readonly text: string }[];
  readonly onChoose: (value: T) => void;
  /** The label is heard but not seen. */
  readonly isLabelHidden?: boolean;
}

export function Segments<T extends string>(props: SegmentsProps<T>) {
  const { label, value, options, onChoose, isLabelHidden = false } = props;
  const name = useId();
  return (
    <fieldset className="segments">
      <legend className={isLabelHidden ? 'unseen' : 'field-label'}>{label}</legend>
      {options.map((option) => (
        <label key={option.value} className="segment">
          <input
            type="radio"
            name={name}
            checked={option.value === value}
            onChange={() => onChoose(option.value)}
          />
          <span>{option.text}</span>
        </label>
      ))}
    </fieldset>
  );
}
