// One engagement: who, when, what it comes to, what comes next; `/engagements/new` writes down an inquiry.
import type { OrganisationJson } from '@colla/wire';
import { useLocation } from 'wouter';
import { useAnswer } from '../books.ts';
import { engagements as say } from '../catalogue/engagements.ts';
import { InquiryForm } from '../features/engagements/inquiry-form.tsx';
import { Page } from '../ui/index.ts';
import { EngagementWhole } from './engagement-whole.tsx';
import { ShownPage } from './shown-page.tsx';

export function Screen({ id = 'new' }: { id?: string | undefined }) {
  const organisation = useAnswer('getOrganisation', {});
  return (
    <ShownPage answer={organisation} what={say('fetchingOne')} title={say('title')}>
      {(organisation) =>
        id === 'new' ? <Inquiry organisation={organisation} /> : <One id={id} organisation={organisation} />
      }
    </ShownPage>
  );
}

function Inquiry({ organisation }: { organisation: OrganisationJson }) {
  const [, goTo] = useLocation();
  return (
    <Page title={say('newTitle')} under={say('newUnder')}>
      <InquiryForm
        organisation={organisation}
        onEntered={({ id }) => goTo(`/engagements/${id}`)}
        onGiveUp={() => goTo('/engagements')}
      />
    </Page>
  );
}

function One({ id, organisation }: { id: string; organisation: OrganisationJson }) {
  const answer = useAnswer('getEngagement', { params: { id } });
  return (
    <ShownPage answer={answer} what={say('fetchingOne')} title={say('title')}>
      {(engagement) => <EngagementWhole engagement={engagement} organisation={organisation} />}
    </ShownPage>
  );
}
