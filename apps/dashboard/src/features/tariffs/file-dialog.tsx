// A tariff read from a file or from its text; nothing is kept by it.
import type { WrittenTariff } from '@colla/rates';
import { refused } from '@colla/refusal';
import { useState } from 'react';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { Button, Dialog, Field, Form, LinesField, type Said } from '../../ui/index.ts';
import { readFile } from './file.ts';

interface FileDialogProps {
  onRead: (written: WrittenTariff) => void;
  onClose: () => void;
}

export function FileDialog({ onRead, onClose }: FileDialogProps) {
  const [text, setText] = useState('');
  const [problem, setProblem] = useState<Said>();
  const write = (next: string) => {
    setText(next);
    setProblem(undefined);
  };
  const read = () => {
    const written = readFile(text);
    if (refused(written)) setProblem({ detail: sayWhere(written.sentence, written.field) });
    else onRead(written);
  };
  const foot = (
    <>
      <Button type="submit" kind="primary">
        {say('fileRead')}
      </Button>
      <Button onPress={onClose}>{say('giveUp')}</Button>
    </>
  );
  return (
    <Dialog title={say('fromFileTitle')} onClose={onClose}>
      <Form problem={problem} onSubmit={read} foot={foot}>
        <p className="aside">{say('fromFileHint')}</p>
        <p>
          <a href="/api/tariff-schema.json" download="tariff-schema.json">
            {say('saveSchema')}
          </a>
        </p>
        <Field label={say('file')}>
          {(wiring) => (
            <input
              {...wiring}
              className="control"
              type="file"
              accept=".json,application/json"
              onChange={(event) => event.target.files?.[0]?.text().then(write)}
            />
          )}
        </Field>
        <LinesField label={say('fileText')} rows={8} value={text} onType={write} />
      </Form>
    </Dialog>
  );
}

/** A clause's sentence names the path from the clause on: in a file it is said whole. */
function sayWhere(sentence: string, field: string | undefined): string {
  if (field === undefined || sentence.includes(field)) return sentence;
  const [said, path] = /“(\/[^”]*)”/.exec(sentence) ?? [];
  return said && path && field.endsWith(path)
    ? sentence.replace(said, `“${field}”`)
    : `${sentence} (${field})`;
}
