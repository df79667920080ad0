/** How far an answer is, or why there is none. */
import type { Looked } from '../../state/lookWork.ts';
import { lightWords as words } from './words.ts';

interface LookStateProps {
  readonly looked: Pick<Looked<unknown>, 'progress' | 'failed' | 'answer'>;
  readonly onAgain: () => void;
}

export function LookState({ looked, onAgain }: LookStateProps) {
  const { progress, failed, answer } = looked;
  if (failed !== null) {
    return (
      <div className="look">
        <p role="alert" className="is-wrong">
          {words.failed(failed)}
        </p>
        <button type="button" className="button" onClick={onAgain}>
          {words.again}
        </button>
      </div>
    );
  }
  return (
    <p role="status" className={progress === null || answer !== null ? 'unseen' : 'quiet'}>
      {progress === null ? '' : `${progress.doing}, ${Math.round(progress.done * 100)} %`}
    </p>
  );
}
