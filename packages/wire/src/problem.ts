// How the API says no: RFC 9457 problem details, with the field and the mend.

import { z } from 'zod';

/** `detail` is the sentence that says what is wrong and how to mend it; `pointer` the JSON pointer of the field. */
export const problem = z.object({
  type: z.string(),
  title: z.string(),
  status: z.int(),
  detail: z.string(),
  pointer: z.string().optional(),
  /** What the refusal was about, for programs. */
  facts: z.record(z.string(), z.union([z.string(), z.number(), z.boolean()])).optional(),
  /** Every field that is wrong, where there are several. */
  errors: z.array(z.object({ pointer: z.string(), detail: z.string() })).optional(),
});
export type Problem = z.output<typeof problem>;
