// The line of steps itself, under rehearsal letters.
import type { Temporal } from '@colla/calendar';
import { whatIf as say } from '../../catalogue/what-if.ts';
import type { Drawing } from './curve-drawing.ts';
import { sayWhen } from './what-if-moments.ts';

interface PictureProps {
  drawing: Drawing;
  until: Temporal.ZonedDateTime;
  /** The amount at the top. */
  top: string;
}

/** The line is stretched to its room; letters stand above it in their own shape. */
export function Picture({ drawing, until, top }: PictureProps) {
  const [first, last] = [sayWhen(drawing.begins), sayWhen(until)];
  return (
    <div className="what-if-picture" role="img" aria-label={say('picture', { first, last })}>
      <p className="aside">{top}</p>
      <div className="what-if-line">
        <svg viewBox="0 0 100 40" preserveAspectRatio="none" aria-hidden="true">
          <path className="ground" d="M0 40H100" />
          <path className="steps" d={drawing.steps.map(({ x }) => `M${x * 100} 0V40`).join('')} />
          <path className="line" d={pathOf(drawing.corners)} />
        </svg>
        {drawing.steps.map(({ letter, x }) => (
          <span key={letter} className="what-if-letter" style={{ insetInlineStart: `${x * 100}%` }}>
            {letter}
          </span>
        ))}
      </div>
      <p className="what-if-ends aside">
        <span>{first}</span>
        <span>{last}</span>
      </p>
    </div>
  );
}

/** Two units are kept free above the line and below it, so that its stroke is not cut. */
function pathOf(corners: Drawing['corners']): string {
  return corners.map(([x, y], at) => `${at === 0 ? 'M' : 'L'}${x * 100} ${38 - y * 36}`).join('');
}
