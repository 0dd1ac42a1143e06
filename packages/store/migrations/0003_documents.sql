CREATE TABLE "answers" (
	"organisation_id" uuid DEFAULT nullif(current_setting('colla.organisation', true), '')::uuid NOT NULL,
	"key" text NOT NULL,
	"asked" text NOT NULL,
	"answer" text NOT NULL,
	"kept_at" timestamp with time zone NOT NULL,
	CONSTRAINT "answers_organisation_id_key_pk" PRIMARY KEY("organisation_id","key")
);
--> statement-breakpoint
ALTER TABLE "answers" ENABLE ROW LEVEL SECURITY;--> statement-breakpoint
CREATE TABLE "documents" (
	"organisation_id" uuid DEFAULT nullif(current_setting('colla.organisation', true), '')::uuid NOT NULL,
	"of" uuid NOT NULL,
	"kind" text NOT NULL,
	"series" text NOT NULL,
	"ordinal" integer NOT NULL,
	"number" text NOT NULL,
	"bytes" "bytea" NOT NULL,
	"sha256" text NOT NULL,
	"issued_at" timestamp with time zone NOT NULL,
	CONSTRAINT "documents_organisation_id_of_pk" PRIMARY KEY("organisation_id","of"),
	CONSTRAINT "documents_ordinal" UNIQUE("organisation_id","series","ordinal"),
	CONSTRAINT "documents_ordinal_from_one" CHECK ("documents"."ordinal" >= 1),
	CONSTRAINT "documents_sha256" CHECK ("documents"."sha256" = encode(sha256("documents"."bytes"), 'hex'))
);
--> statement-breakpoint
ALTER TABLE "documents" ENABLE ROW LEVEL SECURITY;--> statement-breakpoint
ALTER TABLE "answers" ADD CONSTRAINT "answers_organisation_id_organisations_id_fk" FOREIGN KEY ("organisation_id") REFERENCES "public"."organisations"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "documents" ADD CONSTRAINT "documents_organisation_id_organisations_id_fk" FOREIGN KEY ("organisation_id") REFERENCES "public"."organisations"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "answers_kept" ON "answers" USING btree ("organisation_id","kept_at");--> statement-breakpoint
CREATE POLICY "of_its_organisation" ON "answers" AS PERMISSIVE FOR ALL TO "colla_books" USING ("answers"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid) WITH CHECK ("answers"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid);--> statement-breakpoint
CREATE POLICY "of_its_organisation" ON "documents" AS PERMISSIVE FOR ALL TO "colla_books" USING ("documents"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid) WITH CHECK ("documents"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid);--> statement-breakpoint
-- Written by hand, as in 0000_books.sql: what is bound, and what may be done.
ALTER TABLE "answers" FORCE ROW LEVEL SECURITY;--> statement-breakpoint
ALTER TABLE "documents" FORCE ROW LEVEL SECURITY;--> statement-breakpoint
GRANT SELECT, INSERT ON "documents" TO colla_books;--> statement-breakpoint
GRANT SELECT, INSERT, DELETE ON "answers" TO colla_books;--> statement-breakpoint
CREATE FUNCTION issued_stays() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'a document that was issued is never altered or removed'
    USING ERRCODE = 'restrict_violation', CONSTRAINT = tg_table_name || '_stay';
END $$;--> statement-breakpoint
CREATE TRIGGER documents_stay BEFORE UPDATE OR DELETE OR TRUNCATE ON "documents"
  FOR EACH STATEMENT EXECUTE FUNCTION issued_stays();
