CREATE TABLE "journals" (
	"organisation_id" uuid DEFAULT nullif(current_setting('colla.organisation', true), '')::uuid NOT NULL,
	"id" uuid NOT NULL,
	"entered" bigint GENERATED ALWAYS AS IDENTITY (sequence name "journals_entered_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 9223372036854775807 START WITH 1 CACHE 1),
	"on_day" date NOT NULL,
	"event" text NOT NULL,
	"source_kind" text NOT NULL,
	"takes_back_kind" text,
	"takes_back" uuid,
	"currency" text NOT NULL,
	"book_currency" text NOT NULL,
	"rate" text,
	"rate_on" date,
	"rate_source" text,
	CONSTRAINT "journals_organisation_id_id_pk" PRIMARY KEY("organisation_id","id"),
	CONSTRAINT "journals_of_postings" UNIQUE("organisation_id","id","on_day","currency"),
	CONSTRAINT "journals_taken_back_once" UNIQUE("organisation_id","takes_back"),
	CONSTRAINT "journals_sources" CHECK ("journals"."source_kind" in ('invoice', 'credit note', 'payment', 'deposit', 'deposit applied', 'deposit returned', 'credit applied', 'refund', 'write-off', 'late interest', 'undo')),
	CONSTRAINT "journals_undo" CHECK (("journals"."source_kind" = 'undo') = ("journals"."takes_back" is not null) and ("journals"."takes_back" is null) = ("journals"."takes_back_kind" is null)),
	CONSTRAINT "journals_rate" CHECK (("journals"."rate" is null) = ("journals"."rate_on" is null) and ("journals"."rate" is null) = ("journals"."rate_source" is null) and ("journals"."rate" is null or "journals"."currency" <> "journals"."book_currency"))
);
--> statement-breakpoint
ALTER TABLE "journals" ENABLE ROW LEVEL SECURITY;--> statement-breakpoint
CREATE TABLE "postings" (
	"organisation_id" uuid DEFAULT nullif(current_setting('colla.organisation', true), '')::uuid NOT NULL,
	"journal_id" uuid NOT NULL,
	"position" integer NOT NULL,
	"on_day" date NOT NULL,
	"currency" text NOT NULL,
	"purpose" text NOT NULL,
	"party_id" uuid,
	"invoice_id" uuid,
	"engagement_id" uuid,
	"kind" text,
	"tax" text,
	"amount" bigint NOT NULL,
	"book" bigint NOT NULL,
	"about_party" uuid,
	"about_engagement" uuid,
	CONSTRAINT "postings_organisation_id_journal_id_position_pk" PRIMARY KEY("organisation_id","journal_id","position"),
	CONSTRAINT "postings_purposes" CHECK ("postings"."purpose" in ('receivable', 'bank', 'cash', 'deposits held', 'credit held', 'income', 'tax collected', 'costs', 'pay owed', 'write-offs', 'rounding', 'exchange difference')),
	CONSTRAINT "postings_something" CHECK ("postings"."amount" <> 0 or "postings"."book" <> 0),
	CONSTRAINT "postings_account" CHECK (("postings"."party_id" is not null) = ("postings"."purpose" in ('receivable', 'deposits held', 'credit held'))
        and ("postings"."invoice_id" is not null) = ("postings"."purpose" = 'receivable')
        and ("postings"."engagement_id" is not null) = ("postings"."purpose" = 'deposits held')
        and ("postings"."kind" is not null) = ("postings"."purpose" = 'income')
        and ("postings"."tax" is not null) = ("postings"."purpose" = 'tax collected'))
);
--> statement-breakpoint
ALTER TABLE "postings" ENABLE ROW LEVEL SECURITY;--> statement-breakpoint
ALTER TABLE "organisations" ADD COLUMN "closed_through" date;--> statement-breakpoint
ALTER TABLE "journals" ADD CONSTRAINT "journals_organisation_id_organisations_id_fk" FOREIGN KEY ("organisation_id") REFERENCES "public"."organisations"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "journals" ADD CONSTRAINT "journals_takes_back" FOREIGN KEY ("organisation_id","takes_back") REFERENCES "public"."journals"("organisation_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "postings" ADD CONSTRAINT "postings_journal" FOREIGN KEY ("organisation_id","journal_id","on_day","currency") REFERENCES "public"."journals"("organisation_id","id","on_day","currency") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "postings" ADD CONSTRAINT "postings_of_party" FOREIGN KEY ("organisation_id","party_id") REFERENCES "public"."parties"("organisation_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "postings" ADD CONSTRAINT "postings_of_invoice" FOREIGN KEY ("organisation_id","invoice_id") REFERENCES "public"."invoices"("organisation_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "postings" ADD CONSTRAINT "postings_of_engagement" FOREIGN KEY ("organisation_id","engagement_id") REFERENCES "public"."engagements"("organisation_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "journals_day" ON "journals" USING btree ("organisation_id","on_day","entered");--> statement-breakpoint
CREATE INDEX "postings_invoice" ON "postings" USING btree ("organisation_id","invoice_id");--> statement-breakpoint
CREATE INDEX "postings_engagement" ON "postings" USING btree ("organisation_id","engagement_id");--> statement-breakpoint
CREATE INDEX "postings_party" ON "postings" USING btree ("organisation_id",coalesce("party_id", "about_party"),"on_day");--> statement-breakpoint
CREATE INDEX "postings_purpose" ON "postings" USING btree ("organisation_id","purpose","on_day");--> statement-breakpoint
CREATE POLICY "of_its_organisation" ON "journals" AS PERMISSIVE FOR ALL TO "colla_books" USING ("journals"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid) WITH CHECK ("journals"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid);--> statement-breakpoint
CREATE POLICY "of_its_organisation" ON "postings" AS PERMISSIVE FOR ALL TO "colla_books" USING ("postings"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid) WITH CHECK ("postings"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid);--> statement-breakpoint
-- Written by hand, as in 0000_books.sql: what is bound, what may be done, and what holds whoever writes.
ALTER TABLE "journals" FORCE ROW LEVEL SECURITY;--> statement-breakpoint
ALTER TABLE "postings" FORCE ROW LEVEL SECURITY;--> statement-breakpoint
GRANT SELECT, INSERT ON "journals", "postings" TO colla_books;--> statement-breakpoint
CREATE FUNCTION posted_stays() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'what is posted is never altered or removed: a further journal takes it back'
    USING ERRCODE = 'restrict_violation', CONSTRAINT = tg_table_name || '_stay';
END $$;--> statement-breakpoint
CREATE TRIGGER journals_stay BEFORE UPDATE OR DELETE OR TRUNCATE ON "journals"
  FOR EACH STATEMENT EXECUTE FUNCTION posted_stays();--> statement-breakpoint
CREATE TRIGGER postings_stay BEFORE UPDATE OR DELETE OR TRUNCATE ON "postings"
  FOR EACH STATEMENT EXECUTE FUNCTION posted_stays();--> statement-breakpoint
-- Postings come with their journal, in one transaction, or not at all.
CREATE FUNCTION journal_is_new() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF EXISTS (
    SELECT FROM added JOIN journals
      ON journals.organisation_id = added.organisation_id AND journals.id = added.journal_id
      WHERE journals.xmin <> pg_current_xact_id()::xid
  ) THEN
    RAISE EXCEPTION 'a journal that was posted is never added to'
      USING ERRCODE = 'check_violation', CONSTRAINT = 'journals_as_posted';
  END IF;
  RETURN NULL;
END $$;--> statement-breakpoint
CREATE TRIGGER journals_as_posted AFTER INSERT ON "postings"
  REFERENCING NEW TABLE AS added FOR EACH STATEMENT EXECUTE FUNCTION journal_is_new();--> statement-breakpoint
-- Looked at when the transaction commits, for each journal and for each posting: who adds the rest later is looked at again.
CREATE FUNCTION journal_sums() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  of uuid;
  posted record;
  one boolean;
BEGIN
  IF tg_table_name = 'journals' THEN of := new.id; ELSE of := new.journal_id; END IF;
  SELECT currency = book_currency INTO one FROM journals WHERE organisation_id = new.organisation_id AND id = of;
  SELECT count(*) AS count, sum(amount) AS amount, sum(book) AS book, bool_and(amount = book) AS alike INTO posted
    FROM postings WHERE organisation_id = new.organisation_id AND journal_id = of;
  IF posted.count < 2 OR posted.amount <> 0 OR posted.book <> 0 OR (one AND NOT posted.alike) THEN
    RAISE EXCEPTION 'journal % does not balance', of
      USING ERRCODE = 'check_violation', CONSTRAINT = 'journals_balance';
  END IF;
  RETURN NULL;
END $$;--> statement-breakpoint
CREATE CONSTRAINT TRIGGER journals_balance AFTER INSERT ON "journals"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION journal_sums();--> statement-breakpoint
CREATE CONSTRAINT TRIGGER journals_balance AFTER INSERT ON "postings"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION journal_sums();--> statement-breakpoint
-- Nothing is settled beyond what is owed, whatever settles it. It takes the place of the same check on payments alone,
-- which knew nothing of credit notes, of write-offs, nor of a payment that bounced.
DROP TRIGGER allocations_within_invoice ON "allocations";--> statement-breakpoint
DROP FUNCTION invoice_not_overpaid();--> statement-breakpoint
CREATE FUNCTION invoice_not_overpaid() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  owed numeric;
BEGIN
  -- The lock that the books take: what another transaction settled is seen once that one has committed.
  PERFORM pg_advisory_xact_lock(hashtextextended(new.party_id::text, 0));
  SELECT sum(amount) INTO owed FROM postings
    WHERE organisation_id = new.organisation_id AND invoice_id = new.invoice_id AND currency = new.currency;
  IF owed < 0 THEN
    RAISE EXCEPTION 'more would be paid on invoice % than it asks for, or in another currency', new.invoice_id
      USING ERRCODE = 'check_violation', CONSTRAINT = 'postings_within_invoice';
  END IF;
  RETURN NULL;
END $$;--> statement-breakpoint
CREATE CONSTRAINT TRIGGER postings_within_invoice AFTER INSERT ON "postings"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW WHEN (new.purpose = 'receivable' AND new.amount < 0)
  EXECUTE FUNCTION invoice_not_overpaid();--> statement-breakpoint
CREATE FUNCTION deposit_not_overdrawn() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  held numeric;
BEGIN
  PERFORM pg_advisory_xact_lock(hashtextextended(new.party_id::text, 0));
  SELECT -sum(amount) INTO held FROM postings
    WHERE organisation_id = new.organisation_id AND engagement_id = new.engagement_id
      AND party_id = new.party_id AND currency = new.currency;
  IF held < 0 THEN
    RAISE EXCEPTION 'more of a deposit would be taken than is held for engagement %', new.engagement_id
      USING ERRCODE = 'check_violation', CONSTRAINT = 'postings_within_deposit';
  END IF;
  RETURN NULL;
END $$;--> statement-breakpoint
CREATE CONSTRAINT TRIGGER postings_within_deposit AFTER INSERT ON "postings"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW WHEN (new.purpose = 'deposits held' AND new.amount > 0)
  EXECUTE FUNCTION deposit_not_overdrawn();
