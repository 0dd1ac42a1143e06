CREATE TABLE "moves" (
	"organisation_id" uuid DEFAULT nullif(current_setting('colla.organisation', true), '')::uuid NOT NULL,
	"engagement_id" uuid NOT NULL,
	"position" integer NOT NULL,
	"call_id" uuid NOT NULL,
	"started_at" timestamp with time zone NOT NULL,
	"ended_at" timestamp with time zone NOT NULL,
	"zone" text NOT NULL,
	"word_at" timestamp with time zone NOT NULL,
	"word_zone" text NOT NULL,
	"moved_by" text NOT NULL,
	CONSTRAINT "moves_organisation_id_engagement_id_position_pk" PRIMARY KEY("organisation_id","engagement_id","position"),
	CONSTRAINT "moves_end_after_start" CHECK ("moves"."ended_at" > "moves"."started_at"),
	CONSTRAINT "moves_moved_by" CHECK ("moves"."moved_by" in ('payer', 'pianist'))
);
--> statement-breakpoint
ALTER TABLE "moves" ENABLE ROW LEVEL SECURITY;--> statement-breakpoint
ALTER TABLE "invoice_taxes" ALTER COLUMN "rate" SET DATA TYPE numeric(9, 2);--> statement-breakpoint
ALTER TABLE "agreements" ADD COLUMN "terms" jsonb DEFAULT '[]'::jsonb NOT NULL;--> statement-breakpoint
ALTER TABLE "agreements" ADD COLUMN "so_far" integer;--> statement-breakpoint
ALTER TABLE "calls" ADD COLUMN "lifted_at" timestamp with time zone;--> statement-breakpoint
ALTER TABLE "calls" ADD COLUMN "lifted_zone" text;--> statement-breakpoint
ALTER TABLE "calls" ADD COLUMN "lifted_reason" text;--> statement-breakpoint
ALTER TABLE "engagements" ADD COLUMN "soloist_membership" text;--> statement-breakpoint
ALTER TABLE "engagements" ADD COLUMN "rolled_over" jsonb DEFAULT '{}'::jsonb NOT NULL;--> statement-breakpoint
ALTER TABLE "invoice_lines" ADD COLUMN "facts" jsonb DEFAULT '[]'::jsonb NOT NULL;--> statement-breakpoint
ALTER TABLE "invoice_taxes" ADD COLUMN "clause" text;--> statement-breakpoint
ALTER TABLE "invoice_taxes" ADD COLUMN "wording" text;--> statement-breakpoint
ALTER TABLE "invoice_taxes" ADD COLUMN "not_on" text[];--> statement-breakpoint
ALTER TABLE "invoice_taxes" ADD COLUMN "arithmetic" text;--> statement-breakpoint
ALTER TABLE "organisations" ADD COLUMN "terms" jsonb DEFAULT '[]'::jsonb NOT NULL;--> statement-breakpoint
ALTER TABLE "works" ADD COLUMN "difficulty" text;--> statement-breakpoint
ALTER TABLE "works" ADD COLUMN "pages" integer;--> statement-breakpoint
ALTER TABLE "moves" ADD CONSTRAINT "moves_call" FOREIGN KEY ("organisation_id","engagement_id","call_id") REFERENCES "public"."calls"("organisation_id","engagement_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "payers_party" ON "payers" USING btree ("organisation_id","party_id");--> statement-breakpoint
ALTER TABLE "agreements" ADD CONSTRAINT "agreements_so_far" CHECK ("agreements"."so_far" >= 0);--> statement-breakpoint
ALTER TABLE "calls" ADD CONSTRAINT "calls_lifted" CHECK (("calls"."lifted_at" is null) = ("calls"."lifted_reason" is null));--> statement-breakpoint
ALTER TABLE "calls" ADD CONSTRAINT "calls_lifted_zone" CHECK (("calls"."lifted_at" is null) = ("calls"."lifted_zone" is null));--> statement-breakpoint
ALTER TABLE "works" ADD CONSTRAINT "works_pages" CHECK ("works"."pages" >= 1);--> statement-breakpoint
CREATE POLICY "of_its_organisation" ON "moves" AS PERMISSIVE FOR ALL TO "colla_books" USING ("moves"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid) WITH CHECK ("moves"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid);--> statement-breakpoint
-- Written by hand, as in 0000_books.sql: what is bound, and what may be done.
ALTER TABLE "moves" FORCE ROW LEVEL SECURITY;--> statement-breakpoint
GRANT SELECT, INSERT, UPDATE, DELETE ON "moves" TO colla_books;
