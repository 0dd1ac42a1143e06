// What an amount opens to: the clause's sentence, the facts it used, the arithmetic.

interface WhyProps {
  sentence: string | undefined;
  /** Names and what they are; those with nothing to say are left out. */
  rows: readonly (readonly [name: string, value: string])[];
}

export function Why({ sentence, rows }: WhyProps) {
  return (
    <div className="statement-why">
      {sentence && <blockquote>{sentence}</blockquote>}
      <dl>
        {rows
          .filter(([, value]) => value !== '')
          .map(([name, value]) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{joined(value)}</dd>
            </div>
          ))}
      </dl>
    </div>
  );
}

/** Hours keep their sign on the line of their figure: “1.5 h”. */
function joined(text: string): string {
  return text.replaceAll(/(\d) h\b/g, '$1\u00a0h');
}
