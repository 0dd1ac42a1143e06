// What comes over from before, one field for each clause that lets it; what the engagement before has left is proposed.
import type { EngagementWholeJson } from '@colla/wire';
import { engagements as say } from '../../catalogue/engagements.ts';
import { Button, NumberField } from '../../ui/index.ts';
import type { TypedMinutes } from './roll-over.ts';
import { useLeft } from './use-left.ts';

interface RollOverFieldsProps {
  engagement: EngagementWholeJson;
  /** The clauses under which what is left rolls over, and how each reads. */
  clauses: readonly { readonly clause: string; readonly sentence: string }[];
  typed: TypedMinutes;
  onChange: (to: TypedMinutes) => void;
}

export function RollOverFields({ engagement, clauses, typed, onChange }: RollOverFieldsProps) {
  const left = useLeft(engagement, clauses.length > 0);
  return clauses.map(({ clause, sentence }) => {
    const minutes = left?.minutes[clause] ?? 0;
    const proposal = left && say('rolledOverLeft', { count: minutes, title: left.title });
    const isOpen = minutes > 0 && (typed[clause] ?? '').trim() !== String(minutes);
    return (
      <div className="engagement-rows" key={clause}>
        <NumberField
          label={say('rolledOver')}
          hint={[sentence, proposal ?? say('rolledOverHint')].join(' ')}
          at={`/rolledOver/${clause}`}
          optional
          unit={say('minuteUnit')}
          value={typed[clause] ?? ''}
          onType={(text) => onChange({ ...typed, [clause]: text })}
        />
        {isOpen && (
          <div>
            <Button kind="quiet" onPress={() => onChange({ ...typed, [clause]: String(minutes) })}>
              {say('takeOver')}
            </Button>
          </div>
        )}
      </div>
    );
  });
}
