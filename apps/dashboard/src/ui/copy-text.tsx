// Takes an explanation along as text, to answer a dispute with. It says beside itself that it has: a sheet hides the
// status line of the page.
import { useId, useState } from 'react';
import { why as say } from '../catalogue/why.ts';
import { Button } from './button.tsx';

export function CopyText({ text }: { text: () => string }) {
  const [is, setIs] = useState<'there' | 'copied' | 'to be selected'>('there');
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(text());
      setIs('copied');
    } catch {
      // A browser may keep the clipboard to itself; the text can still be taken by hand.
      setIs('to be selected');
    }
  };
  return (
    <>
      <Button kind="quiet" onPress={copy}>
        {say('copy')}
      </Button>
      <span className="aside" role="status">
        {is === 'copied' && say('copied')}
      </span>
      {is === 'to be selected' && <ToSelect text={text()} />}
    </>
  );
}

function ToSelect({ text }: { text: string }) {
  const id = useId();
  return (
    <div className="why-text">
      <label htmlFor={id} className="aside">
        {say('notCopied')}
      </label>
      <textarea
        id={id}
        className="control"
        readOnly
        rows={text.split('\n').length}
        value={text}
        onFocus={(event) => event.currentTarget.select()}
      />
    </div>
  );
}
