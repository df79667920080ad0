/** The forms, each with a small picture of itself. */
import { useId } from 'react';
import { type FormName, formNames } from '../../../../editor/forms/formFigures.ts';
import type { Silhouette } from '../../../../editor/forms/silhouette.ts';
import { formTitles } from '../../../../editor/forms/startFromForm.ts';
import { useFile } from '../../../state/workbench.ts';
import { useSilhouettes } from './useSilhouettes.ts';
import { startWords as words } from './words.ts';

interface FormChoiceProps {
  readonly form: FormName;
  readonly onChoose: (form: FormName) => void;
}

export function FormChoice({ form, onChoose }: FormChoiceProps) {
  const name = useId();
  const pictures = useSilhouettes(useFile());
  return (
    <fieldset className="form-choice">
      <legend className="unseen">{words.forms}</legend>
      {formNames.map((one) => (
        <label key={one} className="form-card">
          <input type="radio" name={name} checked={one === form} onChange={() => onChoose(one)} />
          <Picture of={pictures.get(one)} />
          <span className="form-title">{formTitles[one]}</span>
          <span className="quiet small">{words.about[one]}</span>
        </label>
      ))}
    </fieldset>
  );
}

function Picture({ of }: { readonly of: Silhouette | undefined }) {
  const size = of?.size ?? 100;
  return (
    <svg className="form-picture" viewBox={`0 0 ${size} ${size}`} aria-hidden="true">
      <path className="form-soil" d={`M0 ${size - 3}H${size}`} />
      {of?.strokes.map(({ d, width, isShoot }) => (
        <path key={d} className={isShoot ? 'form-shoot' : 'form-wood'} d={d} strokeWidth={width} />
      ))}
    </svg>
  );
}
