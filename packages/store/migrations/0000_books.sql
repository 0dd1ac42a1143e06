-- Written by hand. The two roles that the tables below let in. Neither can log in, own, create, or pass
-- row-level security by. Roles belong to the whole server, so another database of it may have made them already.
DO $$ BEGIN
  IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'colla_books') THEN
    CREATE ROLE colla_books NOLOGIN;
  END IF;
EXCEPTION WHEN duplicate_object OR unique_violation THEN NULL;
END $$;
--> statement-breakpoint
DO $$ BEGIN
  IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'colla_door') THEN
    CREATE ROLE colla_door NOLOGIN;
  END IF;
EXCEPTION WHEN duplicate_object OR unique_violation THEN NULL;
END $$;
--> statement-breakpoint
-- Whoever migrates is who opens the books later, and must be able to step down into the two roles. Where it may
-- not grant them to itself, somebody has granted them before, or opening the books says what is missing.
DO $$ BEGIN
  IF NOT (SELECT rolsuper FROM pg_roles WHERE rolname = current_user) THEN
    GRANT colla_books, colla_door TO CURRENT_USER;
  END IF;
EXCEPTION WHEN insufficient_privilege THEN NULL;
END $$;
--> statement-breakpoint
CREATE TABLE "agreements" (
	"organisation_id" uuid DEFAULT nullif(current_setting('colla.organisation', true), '')::uuid NOT NULL,
	"id" uuid NOT NULL,
	"engagement_id" uuid NOT NULL,
	"tariff" jsonb NOT NULL,
	"sentences" jsonb NOT NULL,
	"calls" jsonb NOT NULL,
	"holidays" date[] NOT NULL,
	"agreed_at" timestamp with time zone NOT NULL,
	"agreed_zone" text NOT NULL,
	"accepted_by" text NOT NULL,
	CONSTRAINT "agreements_organisation_id_id_pk" PRIMARY KEY("organisation_id","id"),
	CONSTRAINT "agreements_engagement" UNIQUE("organisation_id","engagement_id")
);
--> statement-breakpoint
ALTER TABLE "agreements" ENABLE ROW LEVEL SECURITY;--> statement-breakpoint
CREATE TABLE "allocations" (
	"organisation_id" uuid DEFAULT nullif(current_setting('colla.organisation', true), '')::uuid NOT NULL,
	"payment_id" uuid NOT NULL,
	"invoice_id" uuid NOT NULL,
	"position" integer NOT NULL,
	"amount" bigint NOT NULL,
	"currency" text NOT NULL,
	CONSTRAINT "allocations_organisation_id_payment_id_invoice_id_pk" PRIMARY KEY("organisation_id","payment_id","invoice_id"),
	CONSTRAINT "allocations_amount" CHECK ("allocations"."amount" > 0)
);
--> statement-breakpoint
ALTER TABLE "allocations" ENABLE ROW LEVEL SECURITY;--> statement-breakpoint
CREATE TABLE "calls" (
	"organisation_id" uuid DEFAULT nullif(current_setting('colla.organisation', true), '')::uuid NOT NULL,
	"engagement_id" uuid NOT NULL,
	"id" uuid NOT NULL,
	"position" integer NOT NULL,
	"kind" text NOT NULL,
	"label" text,
	"place" text NOT NULL,
	"starts_at" timestamp with time zone NOT NULL,
	"ends_at" timestamp with time zone NOT NULL,
	"zone" text NOT NULL,
	"on_day" date NOT NULL,
	"standing" text NOT NULL,
	"only_if" text,
	"lapses_at" timestamp with time zone,
	"lapses_zone" text,
	"played_from" timestamp with time zone,
	"played_until" timestamp with time zone,
	"played_zone" text,
	"word_at" timestamp with time zone,
	"word_zone" text,
	"let_fall_by" text,
	"reason" text,
	"was_agreed" boolean,
	CONSTRAINT "calls_organisation_id_engagement_id_id_pk" PRIMARY KEY("organisation_id","engagement_id","id"),
	CONSTRAINT "calls_kinds" CHECK ("calls"."kind" in ('rehearsal', 'lesson', 'coaching', 'dress rehearsal', 'recital', 'jury', 'exam', 'audition', 'competition round', 'recording', 'class', 'service', 'other')),
	CONSTRAINT "calls_end_after_start" CHECK ("calls"."ends_at" > "calls"."starts_at"),
	CONSTRAINT "calls_played_end_after_start" CHECK ("calls"."played_until" > "calls"."played_from"),
	CONSTRAINT "calls_standings" CHECK ("calls"."standing" in ('held', 'agreed', 'played', 'cancelled', 'missed')),
	CONSTRAINT "calls_held" CHECK ("calls"."standing" = 'held' or ("calls"."standing" = 'cancelled' and not "calls"."was_agreed")
        or ("calls"."lapses_at" is null and "calls"."only_if" is null)),
	CONSTRAINT "calls_played" CHECK (("calls"."standing" = 'played') = ("calls"."played_from" is not null)
        and ("calls"."played_from" is null) = ("calls"."played_until" is null)),
	CONSTRAINT "calls_cancelled" CHECK (("calls"."standing" = 'cancelled') = ("calls"."word_at" is not null)
        and ("calls"."word_at" is null) = ("calls"."was_agreed" is null)),
	CONSTRAINT "calls_fallen" CHECK (("calls"."standing" in ('cancelled', 'missed')) = ("calls"."let_fall_by" is not null)
        and ("calls"."let_fall_by" is null) = ("calls"."reason" is null)),
	CONSTRAINT "calls_let_fall_by" CHECK ("calls"."let_fall_by" in ('payer', 'pianist')),
	CONSTRAINT "calls_reason" CHECK ("calls"."reason" in ('other', 'illness', 'emergency', 'force majeure', 'forgotten')),
	CONSTRAINT "calls_lapses_zone" CHECK (("calls"."lapses_at" is null) = ("calls"."lapses_zone" is null)),
	CONSTRAINT "calls_played_zone" CHECK (("calls"."played_from" is null) = ("calls"."played_zone" is null)),
	CONSTRAINT "calls_word_zone" CHECK (("calls"."word_at" is null) = ("calls"."word_zone" is null))
);
--> statement-breakpoint
ALTER TABLE "calls" ENABLE ROW LEVEL SECURITY;--> statement-breakpoint
CREATE TABLE "costs" (
	"organisation_id" uuid DEFAULT nullif(current_setting('colla.organisation', true), '')::uuid NOT NULL,
	"engagement_id" uuid NOT NULL,
	"id" uuid NOT NULL,
	"position" integer NOT NULL,
	"on_day" date NOT NULL,
	"what" text NOT NULL,
	"amount" bigint NOT NULL,
	"currency" text NOT NULL,
	CONSTRAINT "costs_organisation_id_engagement_id_id_pk" PRIMARY KEY("organisation_id","engagement_id","id")
);
--> statement-breakpoint
ALTER TABLE "costs" ENABLE ROW LEVEL SECURITY;--> statement-breakpoint
CREATE TABLE "engagements" (
	"organisation_id" uuid DEFAULT nullif(current_setting('colla.organisation', true), '')::uuid NOT NULL,
	"id" uuid NOT NULL,
	"revision" integer NOT NULL,
	"title" text NOT NULL,
	"stage" text NOT NULL,
	"currency" text NOT NULL,
	"soloist_party" uuid,
	"institution_party" uuid,
	"soloist_level" text,
	"soloist_instrument" text,
	"soloist_study" text,
	"sharers" integer NOT NULL,
	"pianist_class" text,
	"circumstances" text[] NOT NULL,
	"note" text,
	"asked_at" timestamp with time zone NOT NULL,
	"asked_zone" text NOT NULL,
	"quoted_tariff" jsonb,
	"quoted_at" timestamp with time zone,
	"quoted_zone" text,
	"valid_until" timestamp with time zone,
	"valid_zone" text,
	"ended_at" timestamp with time zone,
	"ended_zone" text,
	"cancelled_by" text,
	"cancelled_reason" text,
	"call_count" integer NOT NULL,
	"first_at" timestamp with time zone,
	"first_zone" text,
	"last_at" timestamp with time zone,
	"last_zone" text,
	"parts_wanted" integer NOT NULL,
	CONSTRAINT "engagements_organisation_id_id_pk" PRIMARY KEY("organisation_id","id"),
	CONSTRAINT "engagements_stages" CHECK ("engagements"."stage" in ('inquiry', 'quoted', 'agreed', 'settled', 'declined', 'lapsed', 'cancelled')),
	CONSTRAINT "engagements_sharers" CHECK ("engagements"."sharers" >= 1),
	CONSTRAINT "engagements_quoted" CHECK (case when "engagements"."stage" = 'quoted'
        then "engagements"."quoted_tariff" is not null and "engagements"."quoted_at" is not null and "engagements"."valid_until" is not null
          and "engagements"."valid_until" > "engagements"."quoted_at"
        else "engagements"."quoted_tariff" is null and "engagements"."quoted_at" is null and "engagements"."valid_until" is null end),
	CONSTRAINT "engagements_ended" CHECK (("engagements"."stage" in ('settled', 'cancelled', 'declined', 'lapsed')) = ("engagements"."ended_at" is not null)),
	CONSTRAINT "engagements_cancelled" CHECK (case when "engagements"."stage" = 'cancelled'
        then "engagements"."cancelled_by" is not null and "engagements"."cancelled_reason" is not null
        else "engagements"."cancelled_by" is null and "engagements"."cancelled_reason" is null end),
	CONSTRAINT "engagements_cancelled_by" CHECK ("engagements"."cancelled_by" in ('payer', 'pianist')),
	CONSTRAINT "engagements_cancelled_reason" CHECK ("engagements"."cancelled_reason" in ('other', 'illness', 'emergency', 'force majeure', 'forgotten')),
	CONSTRAINT "engagements_quoted_zone" CHECK (("engagements"."quoted_at" is null) = ("engagements"."quoted_zone" is null)),
	CONSTRAINT "engagements_valid_zone" CHECK (("engagements"."valid_until" is null) = ("engagements"."valid_zone" is null)),
	CONSTRAINT "engagements_ended_zone" CHECK (("engagements"."ended_at" is null) = ("engagements"."ended_zone" is null)),
	CONSTRAINT "engagements_first_zone" CHECK (("engagements"."first_at" is null) = ("engagements"."first_zone" is null)),
	CONSTRAINT "engagements_last_zone" CHECK (("engagements"."last_at" is null) = ("engagements"."last_zone" is null)),
	CONSTRAINT "engagements_summary" CHECK ("engagements"."call_count" >= 0 and "engagements"."parts_wanted" >= 0)
);
--> statement-breakpoint
ALTER TABLE "engagements" ENABLE ROW LEVEL SECURITY;--> statement-breakpoint
CREATE TABLE "invoice_lines" (
	"organisation_id" uuid DEFAULT nullif(current_setting('colla.organisation', true), '')::uuid NOT NULL,
	"invoice_id" uuid NOT NULL,
	"position" integer NOT NULL,
	"key" text NOT NULL,
	"clause" text NOT NULL,
	"category" text NOT NULL,
	"what" text NOT NULL,
	"calls" uuid[] NOT NULL,
	"quantity_count" bigint NOT NULL,
	"quantity_of" bigint NOT NULL,
	"unit" text NOT NULL,
	"rate" bigint NOT NULL,
	"amount" bigint NOT NULL,
	"currency" text NOT NULL,
	"arithmetic" text NOT NULL,
	"on_day" date,
	CONSTRAINT "invoice_lines_organisation_id_invoice_id_position_pk" PRIMARY KEY("organisation_id","invoice_id","position"),
	CONSTRAINT "invoice_lines_quantity" CHECK ("invoice_lines"."quantity_of" > 0),
	CONSTRAINT "invoice_lines_categories" CHECK ("invoice_lines"."category" in ('rehearsal', 'performance', 'package', 'entitlement', 'supplement', 'discount', 'cancellation', 'travel', 'cost', 'other'))
);
--> statement-breakpoint
ALTER TABLE "invoice_lines" ENABLE ROW LEVEL SECURITY;--> statement-breakpoint
CREATE TABLE "invoice_taxes" (
	"organisation_id" uuid DEFAULT nullif(current_setting('colla.organisation', true), '')::uuid NOT NULL,
	"invoice_id" uuid NOT NULL,
	"position" integer NOT NULL,
	"name" text NOT NULL,
	"rate" integer NOT NULL,
	"code" text NOT NULL,
	"inside" boolean NOT NULL,
	"base" bigint NOT NULL,
	"amount" bigint NOT NULL,
	"currency" text NOT NULL,
	CONSTRAINT "invoice_taxes_organisation_id_invoice_id_position_pk" PRIMARY KEY("organisation_id","invoice_id","position"),
	CONSTRAINT "invoice_taxes_rate" CHECK ("invoice_taxes"."rate" >= 0)
);
--> statement-breakpoint
ALTER TABLE "invoice_taxes" ENABLE ROW LEVEL SECURITY;--> statement-breakpoint
CREATE TABLE "invoices" (
	"organisation_id" uuid DEFAULT nullif(current_setting('colla.organisation', true), '')::uuid NOT NULL,
	"id" uuid NOT NULL,
	"series" text NOT NULL,
	"ordinal" integer NOT NULL,
	"number" text NOT NULL,
	"engagement_id" uuid NOT NULL,
	"title" text NOT NULL,
	"currency" text NOT NULL,
	"payer" text NOT NULL,
	"from_name" text NOT NULL,
	"from_address" text[] NOT NULL,
	"from_reference" text,
	"from_tax_number" text,
	"to_party" uuid NOT NULL,
	"to_name" text NOT NULL,
	"to_address" text[] NOT NULL,
	"to_reference" text,
	"to_tax_number" text,
	"pay_to" text[] NOT NULL,
	"net" bigint NOT NULL,
	"tax" bigint NOT NULL,
	"total" bigint NOT NULL,
	"terms" text,
	"note" text,
	"issued_on" date NOT NULL,
	"due_on" date NOT NULL,
	CONSTRAINT "invoices_organisation_id_id_pk" PRIMARY KEY("organisation_id","id"),
	CONSTRAINT "invoices_ordinal" UNIQUE("organisation_id","series","ordinal"),
	CONSTRAINT "invoices_number" UNIQUE("organisation_id","number"),
	CONSTRAINT "invoices_ordinal_from_one" CHECK ("invoices"."ordinal" >= 1),
	CONSTRAINT "invoices_due_once_issued" CHECK ("invoices"."due_on" >= "invoices"."issued_on"),
	CONSTRAINT "invoices_total" CHECK ("invoices"."total" > 0 and "invoices"."net" + "invoices"."tax" = "invoices"."total")
);
--> statement-breakpoint
ALTER TABLE "invoices" ENABLE ROW LEVEL SECURITY;--> statement-breakpoint
CREATE TABLE "legs" (
	"organisation_id" uuid DEFAULT nullif(current_setting('colla.organisation', true), '')::uuid NOT NULL,
	"engagement_id" uuid NOT NULL,
	"id" uuid NOT NULL,
	"position" integer NOT NULL,
	"on_day" date NOT NULL,
	"from_place" text NOT NULL,
	"to_place" text NOT NULL,
	"distance_thousandths" integer NOT NULL,
	"distance_unit" text NOT NULL,
	"minutes" integer NOT NULL,
	"purpose" text NOT NULL,
	CONSTRAINT "legs_organisation_id_engagement_id_id_pk" PRIMARY KEY("organisation_id","engagement_id","id"),
	CONSTRAINT "legs_distance" CHECK ("legs"."distance_thousandths" >= 0 and "legs"."minutes" >= 0),
	CONSTRAINT "legs_distance_unit" CHECK ("legs"."distance_unit" in ('km', 'mile'))
);
--> statement-breakpoint
ALTER TABLE "legs" ENABLE ROW LEVEL SECURITY;--> statement-breakpoint
CREATE TABLE "organisations" (
	"id" uuid PRIMARY KEY NOT NULL,
	"entered" bigint GENERATED ALWAYS AS IDENTITY (sequence name "organisations_entered_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 9223372036854775807 START WITH 1 CACHE 1),
	"name" text NOT NULL,
	"address" text[] NOT NULL,
	"email" text,
	"tax_number" text,
	"pay_to" text[] NOT NULL,
	"currency" text NOT NULL,
	"zone" text NOT NULL,
	"locale" text NOT NULL,
	"paper" text NOT NULL,
	"weekly_limit" integer NOT NULL,
	"holidays" date[] NOT NULL,
	CONSTRAINT "organisations_weekly_limit" CHECK ("organisations"."weekly_limit" >= 0),
	CONSTRAINT "organisations_paper" CHECK ("organisations"."paper" in ('A4', 'Letter'))
);
--> statement-breakpoint
ALTER TABLE "organisations" ENABLE ROW LEVEL SECURITY;--> statement-breakpoint
CREATE TABLE "parties" (
	"organisation_id" uuid DEFAULT nullif(current_setting('colla.organisation', true), '')::uuid NOT NULL,
	"id" uuid NOT NULL,
	"name" text NOT NULL,
	"filed_as" text COLLATE "C" NOT NULL,
	"address" text[] NOT NULL,
	"email" text,
	"reference" text,
	CONSTRAINT "parties_organisation_id_id_pk" PRIMARY KEY("organisation_id","id")
);
--> statement-breakpoint
ALTER TABLE "parties" ENABLE ROW LEVEL SECURITY;--> statement-breakpoint
CREATE TABLE "payers" (
	"organisation_id" uuid DEFAULT nullif(current_setting('colla.organisation', true), '')::uuid NOT NULL,
	"engagement_id" uuid NOT NULL,
	"role" text NOT NULL,
	"position" integer NOT NULL,
	"party_id" uuid NOT NULL,
	CONSTRAINT "payers_organisation_id_engagement_id_role_pk" PRIMARY KEY("organisation_id","engagement_id","role")
);
--> statement-breakpoint
ALTER TABLE "payers" ENABLE ROW LEVEL SECURITY;--> statement-breakpoint
CREATE TABLE "payments" (
	"organisation_id" uuid DEFAULT nullif(current_setting('colla.organisation', true), '')::uuid NOT NULL,
	"id" uuid NOT NULL,
	"party_id" uuid NOT NULL,
	"received_on" date NOT NULL,
	"amount" bigint NOT NULL,
	"currency" text NOT NULL,
	"method" text NOT NULL,
	"reference" text,
	"credit" bigint NOT NULL,
	CONSTRAINT "payments_organisation_id_id_pk" PRIMARY KEY("organisation_id","id"),
	CONSTRAINT "payments_amount" CHECK ("payments"."amount" > 0 and "payments"."credit" between 0 and "payments"."amount"),
	CONSTRAINT "payments_methods" CHECK ("payments"."method" in ('bank transfer', 'cash', 'cheque', 'card'))
);
--> statement-breakpoint
ALTER TABLE "payments" ENABLE ROW LEVEL SECURITY;--> statement-breakpoint
CREATE TABLE "seasons" (
	"organisation_id" uuid DEFAULT nullif(current_setting('colla.organisation', true), '')::uuid NOT NULL,
	"id" uuid NOT NULL,
	"name" text NOT NULL,
	"from_day" date NOT NULL,
	"to_day" date NOT NULL,
	CONSTRAINT "seasons_organisation_id_id_pk" PRIMARY KEY("organisation_id","id"),
	CONSTRAINT "seasons_end_after_start" CHECK ("seasons"."to_day" >= "seasons"."from_day")
);
--> statement-breakpoint
ALTER TABLE "seasons" ENABLE ROW LEVEL SECURITY;--> statement-breakpoint
CREATE TABLE "series" (
	"organisation_id" uuid DEFAULT nullif(current_setting('colla.organisation', true), '')::uuid NOT NULL,
	"series" text NOT NULL,
	"last" integer NOT NULL,
	CONSTRAINT "series_organisation_id_series_pk" PRIMARY KEY("organisation_id","series"),
	CONSTRAINT "series_last" CHECK ("series"."last" >= 1)
);
--> statement-breakpoint
ALTER TABLE "series" ENABLE ROW LEVEL SECURITY;--> statement-breakpoint
CREATE TABLE "sessions" (
	"organisation_id" uuid DEFAULT nullif(current_setting('colla.organisation', true), '')::uuid NOT NULL,
	"token_hash" text NOT NULL,
	"until" timestamp with time zone NOT NULL,
	CONSTRAINT "sessions_organisation_id_token_hash_pk" PRIMARY KEY("organisation_id","token_hash"),
	CONSTRAINT "sessions_token_hash" UNIQUE("token_hash")
);
--> statement-breakpoint
ALTER TABLE "sessions" ENABLE ROW LEVEL SECURITY;--> statement-breakpoint
CREATE TABLE "tariff_versions" (
	"organisation_id" uuid DEFAULT nullif(current_setting('colla.organisation', true), '')::uuid NOT NULL,
	"tariff_id" uuid NOT NULL,
	"version" integer NOT NULL,
	"tariff" jsonb NOT NULL,
	CONSTRAINT "tariff_versions_organisation_id_tariff_id_version_pk" PRIMARY KEY("organisation_id","tariff_id","version"),
	CONSTRAINT "tariff_versions_version" CHECK ("tariff_versions"."version" >= 1),
	CONSTRAINT "tariff_versions_agree" CHECK (("tariff_versions"."tariff" ->> 'version')::integer = "tariff_versions"."version")
);
--> statement-breakpoint
ALTER TABLE "tariff_versions" ENABLE ROW LEVEL SECURITY;--> statement-breakpoint
CREATE TABLE "tariffs" (
	"organisation_id" uuid DEFAULT nullif(current_setting('colla.organisation', true), '')::uuid NOT NULL,
	"id" uuid NOT NULL,
	"filed_as" text COLLATE "C" NOT NULL,
	CONSTRAINT "tariffs_organisation_id_id_pk" PRIMARY KEY("organisation_id","id")
);
--> statement-breakpoint
ALTER TABLE "tariffs" ENABLE ROW LEVEL SECURITY;--> statement-breakpoint
CREATE TABLE "works" (
	"organisation_id" uuid DEFAULT nullif(current_setting('colla.organisation', true), '')::uuid NOT NULL,
	"engagement_id" uuid NOT NULL,
	"id" uuid NOT NULL,
	"position" integer NOT NULL,
	"composer" text NOT NULL,
	"title" text NOT NULL,
	"minutes" integer NOT NULL,
	"requested" boolean NOT NULL,
	"part_edition" text,
	"part_key" text,
	"part_cuts" text,
	"part_state" text NOT NULL,
	"part_permission" text NOT NULL,
	"part_received_on" date,
	CONSTRAINT "works_organisation_id_engagement_id_id_pk" PRIMARY KEY("organisation_id","engagement_id","id"),
	CONSTRAINT "works_minutes" CHECK ("works"."minutes" >= 0),
	CONSTRAINT "works_part_states" CHECK ("works"."part_state" in ('wanted', 'promised', 'received', 'returned for a better copy', 'ready')),
	CONSTRAINT "works_part_permissions" CHECK ("works"."part_permission" in ('not asked', 'not needed', 'asked', 'granted', 'refused'))
);
--> statement-breakpoint
ALTER TABLE "works" ENABLE ROW LEVEL SECURITY;--> statement-breakpoint
ALTER TABLE "agreements" ADD CONSTRAINT "agreements_organisation_id_engagement_id_engagements_organisation_id_id_fk" FOREIGN KEY ("organisation_id","engagement_id") REFERENCES "public"."engagements"("organisation_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "allocations" ADD CONSTRAINT "allocations_organisation_id_payment_id_payments_organisation_id_id_fk" FOREIGN KEY ("organisation_id","payment_id") REFERENCES "public"."payments"("organisation_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "allocations" ADD CONSTRAINT "allocations_organisation_id_invoice_id_invoices_organisation_id_id_fk" FOREIGN KEY ("organisation_id","invoice_id") REFERENCES "public"."invoices"("organisation_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "calls" ADD CONSTRAINT "calls_organisation_id_engagement_id_engagements_organisation_id_id_fk" FOREIGN KEY ("organisation_id","engagement_id") REFERENCES "public"."engagements"("organisation_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "costs" ADD CONSTRAINT "costs_organisation_id_engagement_id_engagements_organisation_id_id_fk" FOREIGN KEY ("organisation_id","engagement_id") REFERENCES "public"."engagements"("organisation_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "engagements" ADD CONSTRAINT "engagements_organisation_id_organisations_id_fk" FOREIGN KEY ("organisation_id") REFERENCES "public"."organisations"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "engagements" ADD CONSTRAINT "engagements_organisation_id_soloist_party_parties_organisation_id_id_fk" FOREIGN KEY ("organisation_id","soloist_party") REFERENCES "public"."parties"("organisation_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "engagements" ADD CONSTRAINT "engagements_organisation_id_institution_party_parties_organisation_id_id_fk" FOREIGN KEY ("organisation_id","institution_party") REFERENCES "public"."parties"("organisation_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "invoice_lines" ADD CONSTRAINT "invoice_lines_organisation_id_invoice_id_invoices_organisation_id_id_fk" FOREIGN KEY ("organisation_id","invoice_id") REFERENCES "public"."invoices"("organisation_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "invoice_taxes" ADD CONSTRAINT "invoice_taxes_organisation_id_invoice_id_invoices_organisation_id_id_fk" FOREIGN KEY ("organisation_id","invoice_id") REFERENCES "public"."invoices"("organisation_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "invoices" ADD CONSTRAINT "invoices_organisation_id_engagement_id_engagements_organisation_id_id_fk" FOREIGN KEY ("organisation_id","engagement_id") REFERENCES "public"."engagements"("organisation_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "invoices" ADD CONSTRAINT "invoices_organisation_id_to_party_parties_organisation_id_id_fk" FOREIGN KEY ("organisation_id","to_party") REFERENCES "public"."parties"("organisation_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "legs" ADD CONSTRAINT "legs_organisation_id_engagement_id_engagements_organisation_id_id_fk" FOREIGN KEY ("organisation_id","engagement_id") REFERENCES "public"."engagements"("organisation_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "parties" ADD CONSTRAINT "parties_organisation_id_organisations_id_fk" FOREIGN KEY ("organisation_id") REFERENCES "public"."organisations"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "payers" ADD CONSTRAINT "payers_organisation_id_engagement_id_engagements_organisation_id_id_fk" FOREIGN KEY ("organisation_id","engagement_id") REFERENCES "public"."engagements"("organisation_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "payers" ADD CONSTRAINT "payers_organisation_id_party_id_parties_organisation_id_id_fk" FOREIGN KEY ("organisation_id","party_id") REFERENCES "public"."parties"("organisation_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "payments" ADD CONSTRAINT "payments_organisation_id_party_id_parties_organisation_id_id_fk" FOREIGN KEY ("organisation_id","party_id") REFERENCES "public"."parties"("organisation_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "seasons" ADD CONSTRAINT "seasons_organisation_id_organisations_id_fk" FOREIGN KEY ("organisation_id") REFERENCES "public"."organisations"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "series" ADD CONSTRAINT "series_organisation_id_organisations_id_fk" FOREIGN KEY ("organisation_id") REFERENCES "public"."organisations"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "sessions" ADD CONSTRAINT "sessions_organisation_id_organisations_id_fk" FOREIGN KEY ("organisation_id") REFERENCES "public"."organisations"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "tariff_versions" ADD CONSTRAINT "tariff_versions_organisation_id_tariff_id_tariffs_organisation_id_id_fk" FOREIGN KEY ("organisation_id","tariff_id") REFERENCES "public"."tariffs"("organisation_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "tariffs" ADD CONSTRAINT "tariffs_organisation_id_organisations_id_fk" FOREIGN KEY ("organisation_id") REFERENCES "public"."organisations"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "works" ADD CONSTRAINT "works_organisation_id_engagement_id_engagements_organisation_id_id_fk" FOREIGN KEY ("organisation_id","engagement_id") REFERENCES "public"."engagements"("organisation_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "allocations_invoice" ON "allocations" USING btree ("organisation_id","invoice_id");--> statement-breakpoint
CREATE INDEX "calls_on_day" ON "calls" USING btree ("organisation_id","on_day");--> statement-breakpoint
CREATE INDEX "engagements_asked" ON "engagements" USING btree ("organisation_id","asked_at","id");--> statement-breakpoint
CREATE INDEX "engagements_stage" ON "engagements" USING btree ("organisation_id","stage","asked_at","id");--> statement-breakpoint
CREATE INDEX "invoices_engagement" ON "invoices" USING btree ("organisation_id","engagement_id");--> statement-breakpoint
CREATE INDEX "invoices_issued" ON "invoices" USING btree ("organisation_id","issued_on","id");--> statement-breakpoint
CREATE INDEX "parties_filed" ON "parties" USING btree ("organisation_id","filed_as","id");--> statement-breakpoint
CREATE INDEX "payments_received" ON "payments" USING btree ("organisation_id","received_on","id");--> statement-breakpoint
CREATE INDEX "seasons_from" ON "seasons" USING btree ("organisation_id","from_day","id");--> statement-breakpoint
CREATE INDEX "tariffs_filed" ON "tariffs" USING btree ("organisation_id","filed_as","id");--> statement-breakpoint
CREATE POLICY "of_its_organisation" ON "agreements" AS PERMISSIVE FOR ALL TO "colla_books" USING ("agreements"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid) WITH CHECK ("agreements"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid);--> statement-breakpoint
CREATE POLICY "of_its_organisation" ON "allocations" AS PERMISSIVE FOR ALL TO "colla_books" USING ("allocations"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid) WITH CHECK ("allocations"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid);--> statement-breakpoint
CREATE POLICY "of_its_organisation" ON "calls" AS PERMISSIVE FOR ALL TO "colla_books" USING ("calls"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid) WITH CHECK ("calls"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid);--> statement-breakpoint
CREATE POLICY "of_its_organisation" ON "costs" AS PERMISSIVE FOR ALL TO "colla_books" USING ("costs"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid) WITH CHECK ("costs"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid);--> statement-breakpoint
CREATE POLICY "of_its_organisation" ON "engagements" AS PERMISSIVE FOR ALL TO "colla_books" USING ("engagements"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid) WITH CHECK ("engagements"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid);--> statement-breakpoint
CREATE POLICY "of_its_organisation" ON "invoice_lines" AS PERMISSIVE FOR ALL TO "colla_books" USING ("invoice_lines"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid) WITH CHECK ("invoice_lines"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid);--> statement-breakpoint
CREATE POLICY "of_its_organisation" ON "invoice_taxes" AS PERMISSIVE FOR ALL TO "colla_books" USING ("invoice_taxes"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid) WITH CHECK ("invoice_taxes"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid);--> statement-breakpoint
CREATE POLICY "of_its_organisation" ON "invoices" AS PERMISSIVE FOR ALL TO "colla_books" USING ("invoices"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid) WITH CHECK ("invoices"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid);--> statement-breakpoint
CREATE POLICY "of_its_organisation" ON "legs" AS PERMISSIVE FOR ALL TO "colla_books" USING ("legs"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid) WITH CHECK ("legs"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid);--> statement-breakpoint
CREATE POLICY "of_its_organisation" ON "organisations" AS PERMISSIVE FOR ALL TO "colla_books" USING ("organisations"."id" = nullif(current_setting('colla.organisation', true), '')::uuid) WITH CHECK ("organisations"."id" = nullif(current_setting('colla.organisation', true), '')::uuid);--> statement-breakpoint
CREATE POLICY "at_the_door" ON "organisations" AS PERMISSIVE FOR SELECT TO "colla_door" USING (true);--> statement-breakpoint
CREATE POLICY "of_its_organisation" ON "parties" AS PERMISSIVE FOR ALL TO "colla_books" USING ("parties"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid) WITH CHECK ("parties"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid);--> statement-breakpoint
CREATE POLICY "of_its_organisation" ON "payers" AS PERMISSIVE FOR ALL TO "colla_books" USING ("payers"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid) WITH CHECK ("payers"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid);--> statement-breakpoint
CREATE POLICY "of_its_organisation" ON "payments" AS PERMISSIVE FOR ALL TO "colla_books" USING ("payments"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid) WITH CHECK ("payments"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid);--> statement-breakpoint
CREATE POLICY "of_its_organisation" ON "seasons" AS PERMISSIVE FOR ALL TO "colla_books" USING ("seasons"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid) WITH CHECK ("seasons"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid);--> statement-breakpoint
CREATE POLICY "of_its_organisation" ON "series" AS PERMISSIVE FOR ALL TO "colla_books" USING ("series"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid) WITH CHECK ("series"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid);--> statement-breakpoint
CREATE POLICY "of_its_organisation" ON "sessions" AS PERMISSIVE FOR ALL TO "colla_books" USING ("sessions"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid) WITH CHECK ("sessions"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid);--> statement-breakpoint
CREATE POLICY "at_the_door" ON "sessions" AS PERMISSIVE FOR SELECT TO "colla_door" USING (true);--> statement-breakpoint
CREATE POLICY "of_its_organisation" ON "tariff_versions" AS PERMISSIVE FOR ALL TO "colla_books" USING ("tariff_versions"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid) WITH CHECK ("tariff_versions"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid);--> statement-breakpoint
CREATE POLICY "of_its_organisation" ON "tariffs" AS PERMISSIVE FOR ALL TO "colla_books" USING ("tariffs"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid) WITH CHECK ("tariffs"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid);--> statement-breakpoint
CREATE POLICY "of_its_organisation" ON "works" AS PERMISSIVE FOR ALL TO "colla_books" USING ("works"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid) WITH CHECK ("works"."organisation_id" = nullif(current_setting('colla.organisation', true), '')::uuid);--> statement-breakpoint
-- Written by hand, because drizzle-kit knows neither forced row-level security nor grants.
-- FORCE binds the owner of the tables too.
ALTER TABLE "agreements" FORCE ROW LEVEL SECURITY;--> statement-breakpoint
ALTER TABLE "allocations" FORCE ROW LEVEL SECURITY;--> statement-breakpoint
ALTER TABLE "calls" FORCE ROW LEVEL SECURITY;--> statement-breakpoint
ALTER TABLE "costs" FORCE ROW LEVEL SECURITY;--> statement-breakpoint
ALTER TABLE "engagements" FORCE ROW LEVEL SECURITY;--> statement-breakpoint
ALTER TABLE "invoice_lines" FORCE ROW LEVEL SECURITY;--> statement-breakpoint
ALTER TABLE "invoice_taxes" FORCE ROW LEVEL SECURITY;--> statement-breakpoint
ALTER TABLE "invoices" FORCE ROW LEVEL SECURITY;--> statement-breakpoint
ALTER TABLE "legs" FORCE ROW LEVEL SECURITY;--> statement-breakpoint
ALTER TABLE "organisations" FORCE ROW LEVEL SECURITY;--> statement-breakpoint
ALTER TABLE "parties" FORCE ROW LEVEL SECURITY;--> statement-breakpoint
ALTER TABLE "payers" FORCE ROW LEVEL SECURITY;--> statement-breakpoint
ALTER TABLE "payments" FORCE ROW LEVEL SECURITY;--> statement-breakpoint
ALTER TABLE "seasons" FORCE ROW LEVEL SECURITY;--> statement-breakpoint
ALTER TABLE "series" FORCE ROW LEVEL SECURITY;--> statement-breakpoint
ALTER TABLE "sessions" FORCE ROW LEVEL SECURITY;--> statement-breakpoint
ALTER TABLE "tariff_versions" FORCE ROW LEVEL SECURITY;--> statement-breakpoint
ALTER TABLE "tariffs" FORCE ROW LEVEL SECURITY;--> statement-breakpoint
ALTER TABLE "works" FORCE ROW LEVEL SECURITY;--> statement-breakpoint
GRANT USAGE ON SCHEMA public TO colla_books, colla_door;--> statement-breakpoint
-- Nouns that change but are never removed.
GRANT SELECT, INSERT, UPDATE ON "organisations", "parties", "tariffs", "engagements", "seasons", "series" TO colla_books;--> statement-breakpoint
-- What an engagement is made of until it is settled.
GRANT SELECT, INSERT, UPDATE, DELETE ON "payers", "calls", "works", "legs", "costs" TO colla_books;--> statement-breakpoint
-- Issued, agreed or received: never altered, never removed.
GRANT SELECT, INSERT ON "tariff_versions", "agreements", "invoices", "invoice_lines", "invoice_taxes", "payments", "allocations" TO colla_books;--> statement-breakpoint
GRANT SELECT, INSERT, DELETE ON "sessions" TO colla_books;--> statement-breakpoint
-- Before the organisation is known: whose a session is, and which organisations there are. Nothing else of them.
GRANT SELECT ("id", "entered") ON "organisations" TO colla_door;--> statement-breakpoint
GRANT SELECT ("organisation_id", "token_hash", "until") ON "sessions" TO colla_door;--> statement-breakpoint
-- Sums that a CHECK cannot reach, looked at when the transaction commits.
CREATE FUNCTION invoice_sums() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  lines_sum numeric;
  tax_sum numeric;
  tax_on_top numeric;
BEGIN
  SELECT coalesce(sum(amount), 0) INTO lines_sum FROM invoice_lines
    WHERE organisation_id = new.organisation_id AND invoice_id = new.id;
  SELECT coalesce(sum(amount), 0), coalesce(sum(amount) FILTER (WHERE NOT inside), 0) INTO tax_sum, tax_on_top
    FROM invoice_taxes WHERE organisation_id = new.organisation_id AND invoice_id = new.id;
  IF lines_sum + tax_on_top <> new.total OR tax_sum <> new.tax THEN
    RAISE EXCEPTION 'invoice % does not add up', new.number
      USING ERRCODE = 'check_violation', CONSTRAINT = 'invoices_add_up';
  END IF;
  RETURN NULL;
END $$;--> statement-breakpoint
CREATE CONSTRAINT TRIGGER invoices_add_up AFTER INSERT ON "invoices"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION invoice_sums();--> statement-breakpoint
-- Lines and taxes come with their invoice, in one transaction, or not at all.
CREATE FUNCTION invoice_is_new() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF EXISTS (
    SELECT FROM added JOIN invoices
      ON invoices.organisation_id = added.organisation_id AND invoices.id = added.invoice_id
      WHERE invoices.xmin <> pg_current_xact_id()::xid
  ) THEN
    RAISE EXCEPTION 'an invoice that was issued is never added to'
      USING ERRCODE = 'check_violation', CONSTRAINT = 'invoices_as_issued';
  END IF;
  RETURN NULL;
END $$;--> statement-breakpoint
CREATE TRIGGER invoices_as_issued AFTER INSERT ON "invoice_lines"
  REFERENCING NEW TABLE AS added FOR EACH STATEMENT EXECUTE FUNCTION invoice_is_new();--> statement-breakpoint
CREATE TRIGGER invoices_as_issued AFTER INSERT ON "invoice_taxes"
  REFERENCING NEW TABLE AS added FOR EACH STATEMENT EXECUTE FUNCTION invoice_is_new();--> statement-breakpoint
CREATE FUNCTION payment_sums() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  received payments%ROWTYPE;
  allocated numeric;
BEGIN
  IF tg_table_name = 'payments' THEN
    SELECT * INTO received FROM payments WHERE organisation_id = new.organisation_id AND id = new.id;
  ELSE
    SELECT * INTO received FROM payments WHERE organisation_id = new.organisation_id AND id = new.payment_id;
  END IF;
  SELECT coalesce(sum(amount), 0) INTO allocated FROM allocations
    WHERE organisation_id = received.organisation_id AND payment_id = received.id AND currency = received.currency;
  IF allocated + received.credit <> received.amount THEN
    RAISE EXCEPTION 'a payment of % is not shared out in full', received.amount
      USING ERRCODE = 'check_violation', CONSTRAINT = 'payments_add_up';
  END IF;
  RETURN NULL;
END $$;--> statement-breakpoint
CREATE CONSTRAINT TRIGGER payments_add_up AFTER INSERT ON "payments"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION payment_sums();--> statement-breakpoint
CREATE CONSTRAINT TRIGGER payments_add_up AFTER INSERT ON "allocations"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION payment_sums();--> statement-breakpoint
CREATE FUNCTION invoice_not_overpaid() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  asked invoices%ROWTYPE;
  paid numeric;
BEGIN
  -- The lock that lockInvoice takes: what another transaction allocated is seen once that one has committed.
  PERFORM pg_advisory_xact_lock(hashtextextended(new.invoice_id::text, 0));
  SELECT * INTO asked FROM invoices WHERE organisation_id = new.organisation_id AND id = new.invoice_id;
  SELECT sum(amount) INTO paid FROM allocations
    WHERE organisation_id = new.organisation_id AND invoice_id = new.invoice_id;
  IF paid > asked.total OR new.currency <> asked.currency THEN
    RAISE EXCEPTION 'more would be paid on invoice % than it asks for, or in another currency', asked.number
      USING ERRCODE = 'check_violation', CONSTRAINT = 'allocations_within_invoice';
  END IF;
  RETURN NULL;
END $$;--> statement-breakpoint
CREATE CONSTRAINT TRIGGER allocations_within_invoice AFTER INSERT ON "allocations"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION invoice_not_overpaid();
