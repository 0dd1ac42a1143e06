// The reference rates to which late payment law adds its points, by the half-year in which a debt became late.

/** Basis points by half-year. */
type Rates = Readonly<Record<string, number>>;

/**
 * Bank of England base rate that holds for debts that became late in the half-year: that of 31 December before for the
 * first, of 30 June before for the second. Source: payontime.co.uk, “How to calculate late payment interest and
 * compensation”, reference rate table; 2026H2 from memory (3.75 % read for June 2026, not confirmed for 30 June).
 */
const UK: Rates = {
  '2015H1': 50,
  '2015H2': 50,
  '2016H1': 50,
  '2016H2': 50,
  '2017H1': 25,
  '2017H2': 25,
  '2018H1': 50,
  '2018H2': 50,
  '2019H1': 75,
  '2019H2': 75,
  '2020H1': 75,
  '2020H2': 10,
  '2021H1': 10,
  '2021H2': 10,
  '2022H1': 25,
  '2022H2': 125,
  '2023H1': 350,
  '2023H2': 500,
  '2024H1': 525,
  '2024H2': 525,
  '2025H1': 475,
  '2025H2': 425,
  '2026H1': 375,
  '2026H2': 375,
};

/**
 * European Central Bank, rate of the main refinancing operations on the first day of the half-year (Directive
 * 2011/7/EU, article 3(3)). Source: ECB, “Key interest rates”, from memory.
 */
const EU: Rates = { '2024H2': 425, '2025H1': 315, '2025H2': 215, '2026H1': 215 };

export const REFERENCE_RATES = { UK, EU } as const;

/** The half-year of a day, as `2026H1`. */
export function halfYearOf({ year, month }: { year: number; month: number }): string {
  return `${year}H${month <= 6 ? 1 : 2}`;
}
