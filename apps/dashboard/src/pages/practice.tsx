// Whose books these are, and how they are kept.
import { useAnswer } from '../books.ts';
import { practice } from '../catalogue/practice.ts';
import { useAsked } from '../features/engagements/use-asked.ts';
import { Practice } from '../features/practice/practice.tsx';
import { Page, Shown } from '../ui/index.ts';

export function Screen() {
  const organisation = useAnswer('getOrganisation', {});
  const asked = useAsked();
  return (
    <Page title={practice('title')} under={practice('under')}>
      <Shown answer={organisation} what={practice('what')}>
        {(value) => (
          <div className="practice">
            <Practice of={value} termNames={asked.is === 'here' ? asked.value.words('term') : []} />
          </div>
        )}
      </Shown>
    </Page>
  );
}
