/** Something in the picture that is picked like a button and then moved. */
import type { KeyboardEvent, ReactNode } from 'react';
import type { useGrip } from '../../../fields/useGrip.ts';

interface PickableProps {
  readonly label: string;
  readonly className: string;
  readonly isPicked: boolean;
  readonly onPick: () => void;
  readonly onTakeAway?: () => void;
  readonly grip: ReturnType<typeof useGrip>;
  readonly children: ReactNode;
}

export function Pickable({ label, className, isPicked, onPick, onTakeAway, grip, children }: PickableProps) {
  const onKeyDown = (event: KeyboardEvent<SVGGElement>) => {
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      onPick();
    } else if (event.key === 'Delete' && onTakeAway !== undefined) {
      event.preventDefault();
      onTakeAway();
    } else grip.onKeyDown(event);
  };
  return (
    <g
      {...grip}
      role="button"
      tabIndex={0}
      aria-pressed={isPicked}
      aria-label={label}
      className={`${className}${isPicked ? ' is-picked' : ''}`}
      onClick={onPick}
      onKeyDown={onKeyDown}
    >
      {children}
    </g>
  );
}
