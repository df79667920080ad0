/** How far a piece of work is, with a way to stop it. Shown only when it lasts longer than a moment. */
import { useEffect, useState } from 'react';
import type { Progress as Step } from '../../engine/job.ts';

const showAfterMs = 1000;

interface ProgressProps {
  readonly step: Step | null;
  readonly onCancel: () => void;
  /** Default a second. */
  readonly afterMs?: number;
}

export function Progress({ step, onCancel, afterMs = showAfterMs }: ProgressProps) {
  const isUnderWay = step !== null;
  const [isLong, setLong] = useState(false);
  useEffect(() => {
    if (!isUnderWay) {
      setLong(false);
      return undefined;
    }
    const timer = setTimeout(() => setLong(true), afterMs);
    return () => clearTimeout(timer);
  }, [isUnderWay, afterMs]);
  if (step === null || !isLong) return null;
  const percent = Math.round(step.done * 100);
  return (
    <div className="progress">
      <progress max={100} value={percent} aria-label={step.doing} />
      <span className="progress-words">
        {step.doing}, {percent} %
      </span>
      <button type="button" className="button is-small" onClick={onCancel}>
        Stop
      </button>
    </div>
  );
}
