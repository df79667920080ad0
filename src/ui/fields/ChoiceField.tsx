/** One of a few. */
import { useId } from 'react';

interface ChoiceFieldProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly options: readonly { readonly value: T; readonly text: string }[];
  readonly onChoose: (value: T) => void;
  readonly disabled?: boolean;
}

export function ChoiceField<T extends string>(props: ChoiceFieldProps<T>) {
  const { label, value, options, onChoose, disabled = false } = props;
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id} className="field-label">
        {label}
      </label>
      <span className="field-entry">
        <select
          id={id}
          value={value}
          disabled={disabled}
          onChange={(event) => onChoose(event.target.value as T)}
        >
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.text}
            </option>
          ))}
        </select>
      </span>
    </div>
  );
}
