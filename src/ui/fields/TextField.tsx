/** A line of text, told to the page when the entry is finished. */
import { useId, useState } from 'react';

interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onCommit: (text: string) => void;
  readonly placeholder?: string;
}

export function TextField({ label, value, onCommit, placeholder }: TextFieldProps) {
  const [typed, setTyped] = useState<string | null>(null);
  const id = useId();
  const commit = () => {
    setTyped(null);
    if (typed !== null && typed.trim() !== value) onCommit(typed.trim());
  };
  return (
    <div className="field is-wide">
      <label htmlFor={id} className="field-label">
        {label}
      </label>
      <span className="field-entry">
        <input
          id={id}
          type="text"
          autoComplete="off"
          maxLength={200}
          value={typed ?? value}
          placeholder={placeholder}
          onChange={(event) => setTyped(event.target.value)}
          onBlur={commit}
          onKeyDown={(event) => event.key === 'Enter' && commit()}
        />
      </span>
    </div>
  );
}
