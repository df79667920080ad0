/** One figure of a form: a slider with its value in words. */
import { useId } from 'react';
import type { FormFigure, FormRange } from '../../../../editor/forms/formFigures.ts';
import { formatLength, type Units } from '../../../../geometry/measure.ts';
import { wind } from '../../../../geometry/world.ts';
import { useUnits } from '../../../state/workbench.ts';

interface FormSliderProps {
  readonly name: FormFigure;
  readonly label: string;
  readonly range: FormRange;
  readonly value: number;
  readonly onChange: (value: number) => void;
}

/** Metres or degrees from mark to mark; our choice: as fine as a first guess needs. */
const steps: Readonly<Record<FormFigure, number>> = {
  trunkM: 0.01,
  limbs: 1,
  spreadM: 0.05,
  laterals: 1,
  shoots: 1,
  shootM: 0.05,
  towardsDeg: 1,
};

export function figureText(name: FormFigure, value: number, units: Units): string {
  if (name === 'towardsDeg') return `${Math.round(value)}°, ${wind(value)}`;
  return name.endsWith('M') ? formatLength(value, units) : String(value);
}

export function FormSlider({ name, label, range, value, onChange }: FormSliderProps) {
  const id = useId();
  const units = useUnits();
  const text = figureText(name, value, units);
  return (
    <div className="form-slider">
      <label htmlFor={id}>{label}</label>
      <output htmlFor={id}>{text}</output>
      <input
        id={id}
        type="range"
        min={range.min}
        max={range.max}
        step={steps[name]}
        value={value}
        aria-valuetext={text}
        // A slider's marks are counted from its lower end and may miss the upper one by a rounding.
        onChange={(event) => onChange(Math.min(range.max, Math.max(range.min, Number(event.target.value))))}
      />
    </div>
  );
}
