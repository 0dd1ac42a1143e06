// The controls of every screen; they know no noun.
export { Amount } from './amount.tsx';
export { AmountLine, WhyView } from './amount-line.tsx';
export { Button, ButtonLink, Buttons } from './button.tsx';
export { Choice, type Option, Options, Tick, Ticks } from './choice.tsx';
export { CopyText } from './copy-text.tsx';
export { Dialog } from './dialog.tsx';
export { Field, LinesField, NumberField, TextField } from './field.tsx';
export { Figure, Hours } from './figure.tsx';
export { Form, type Said } from './form.tsx';
export { MoneyField } from './money-field.tsx';
export { Opens } from './opens.tsx';
export { Page, Part } from './page.tsx';
export { Empty, Loading, ProblemNote, Shown } from './states.tsx';
export { useStatus, WithStatus } from './status.tsx';
export { Stave } from './stave.tsx';
export { type Column, Table } from './table.tsx';
export { DayField, TimeField } from './time-field.tsx';
export { addedUp, sayFact, type Why, whyText } from './why.ts';
