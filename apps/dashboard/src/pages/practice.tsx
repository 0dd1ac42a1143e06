// Whose books these are, and how they are kept.
import { useAnswer } from '../books.ts';
import { practice } from '../catalogue/practice.ts';
import { Practice } from '../features/practice/practice.tsx';
import { Page, Shown } from '../ui/index.ts';

export function Screen() {
  const organisation = useAnswer('getOrganisation', {});
  return (
    <Page title={practice('title')} under={practice('under')}>
      <Shown answer={organisation} what={practice('what')}>
        {(value) => (
          <div className="practice">
            <Practice of={value} />
          </div>
        )}
      </Shown>
    </Page>
  );
}
