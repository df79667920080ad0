/** All that is told of the selected shoot: by the way its light came, its sun, its sky, and its nodes one by one. */
import type { NodeFigures, ShootLight } from '../../../engine/reports.ts';
import { useUnits, useView, useWorkbench } from '../../state/workbench.ts';
import type { LightScale } from '../../theme/lightScale.ts';
import { detailWords as words } from './detailWords.ts';
import { percent } from './words.ts';

interface ShootDetailProps {
  readonly shoot: ShootLight;
  readonly nodes: readonly NodeFigures[];
  readonly dayLengthH: number;
  readonly scale: LightScale;
}

export function ShootDetail({ shoot, nodes, dayLengthH, scale }: ShootDetailProps) {
  const units = useUnits();
  const facts = words.facts(shoot, dayLengthH, units);
  return (
    <div className="detail">
      <dl className="shares">
        {facts.map(([name, figure, meaning]) => (
          <div key={name}>
            <dt>
              {name}
              <span className="quiet small">{meaning}</span>
            </dt>
            <dd>{figure}</dd>
          </div>
        ))}
      </dl>
      <p className="small-head">{words.nodes}</p>
      <ol className="nodes">
        {nodes.map((node) => (
          <li key={node.node}>
            <NodeButton node={node} css={scale.css(node.share)} />
          </li>
        ))}
      </ol>
    </div>
  );
}

function NodeButton({ node, css }: { readonly node: NodeFigures; readonly css: string }) {
  const { view } = useWorkbench();
  const { skyAt } = useView();
  const isChosen = skyAt?.shootId === node.shootId && skyAt.node === node.node;
  return (
    <button
      type="button"
      className="button node-button"
      aria-pressed={isChosen}
      title={words.toSky}
      onClick={() => view.setState({ lookingAt: 'sky', skyAt: { shootId: node.shootId, node: node.node } })}
    >
      <span className="swatch" style={{ backgroundColor: css }} aria-hidden="true" />
      <span>{node.node}</span>
      <strong>{percent(node.share)} %</strong>
      <span className="quiet">{words.sun(node.sunHours)}</span>
    </button>
  );
}
