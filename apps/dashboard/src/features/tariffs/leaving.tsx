// Whoever leaves a tariff that is being written, by a link, by going back or by shutting the window, is asked first.
import { useEffect, useState } from 'react';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { Button, Buttons, Dialog } from '../../ui/index.ts';

/** Drawn while something would be lost. */
export function AsksBeforeLeaving() {
  const [leave, setLeave] = useState<() => void>();
  useEffect(() => watchLeaving((go) => setLeave(() => go)), []);
  if (!leave) return undefined;
  const stay = () => setLeave(undefined);
  const go = () => {
    stay();
    leave();
  };
  return (
    <Dialog title={say('leaveTitle')} onClose={stay}>
      <p>{say('leaveHint')}</p>
      <Buttons>
        <Button kind="primary" onPress={stay}>
          {say('leaveNot')}
        </Button>
        <Button onPress={go}>{say('leave')}</Button>
      </Buttons>
    </Dialog>
  );
}

/** Holds back each way out and asks, with what then leaves; gives what ends the watch. */
function watchLeaving(ask: (go: () => void) => void): () => void {
  const here = location.href;
  let free = false;
  const follow = (event: MouseEvent) => {
    const link = linkOf(event);
    if (free || !link) return;
    event.preventDefault();
    event.stopPropagation();
    ask(() => {
      free = true;
      link.click();
      free = false;
    });
  };
  // Going back cannot be held back: it comes to the same address once more, and is asked about there.
  history.pushState(null, '', here);
  const goBack = () => {
    if (free || location.href !== here) return;
    history.pushState(null, '', here);
    ask(() => {
      free = true;
      history.go(-2);
    });
  };
  const shut = (event: BeforeUnloadEvent) => {
    if (!free) event.preventDefault();
  };
  document.addEventListener('click', follow, true);
  addEventListener('popstate', goBack);
  addEventListener('beforeunload', shut);
  return () => {
    document.removeEventListener('click', follow, true);
    removeEventListener('popstate', goBack);
    removeEventListener('beforeunload', shut);
  };
}

/** The link of this window that is followed by a press; one to a file, or held down for another window, leaves nothing. */
function linkOf(event: MouseEvent): HTMLAnchorElement | undefined {
  const { target } = event;
  const link = target instanceof Element ? target.closest<HTMLAnchorElement>('a[href]') : undefined;
  const isElsewhere = event.ctrlKey || event.metaKey || event.shiftKey || event.button !== 0;
  if (!link || isElsewhere || link.hasAttribute('download') || link.target === '_blank') return undefined;
  return link.getAttribute('href')?.startsWith('#') ? undefined : link;
}
