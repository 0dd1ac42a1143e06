// Where somebody begins in a dialog.

/** Gives the focus to the first field in sight; of options, to the one chosen; to the heading where no field is. */
export function beginIn(dialog: HTMLElement): void {
  const fields = [...dialog.querySelectorAll<HTMLElement>('input, select, textarea')];
  const inSight = fields.filter((field) => field.closest('details:not([open])') === null);
  const isOther = (field: HTMLElement) =>
    field instanceof HTMLInputElement && field.type === 'radio' && !field.checked;
  const first = inSight.find((field) => !isOther(field)) ?? inSight[0];
  (first ?? dialog.querySelector<HTMLElement>('h2'))?.focus();
}

/** The same for what came after its dialog was opened, unless somebody has gone further than the heading by then. */
export function beginLate(dialog: HTMLDialogElement): void {
  if (dialog.open && document.activeElement === dialog.querySelector('h2')) beginIn(dialog);
}
