CREATE TABLE `applications` (
	`id` text PRIMARY KEY NOT NULL,
	`organization_id` text NOT NULL,
	`learner_id` text NOT NULL,
	`scheme_id` text NOT NULL,
	`scheme` text NOT NULL,
	`state` text NOT NULL,
	`applied_at` integer NOT NULL,
	`decided_by` text,
	`decided_at` integer,
	`reason` text,
	`demo` integer DEFAULT false NOT NULL,
	FOREIGN KEY (`organization_id`) REFERENCES `organizations`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `applications_of_organization` ON `applications` (`organization_id`,`state`,`applied_at`);--> statement-breakpoint
CREATE INDEX `applications_of_learner` ON `applications` (`learner_id`,`organization_id`);--> statement-breakpoint
CREATE TABLE `certificate_events` (
	`id` text PRIMARY KEY NOT NULL,
	`certificate_id` text NOT NULL,
	`kind` text NOT NULL,
	`reason` text NOT NULL,
	`by` text NOT NULL,
	`at` integer NOT NULL,
	FOREIGN KEY (`certificate_id`) REFERENCES `certificates`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `certificate_events_of` ON `certificate_events` (`certificate_id`,`at`);--> statement-breakpoint
CREATE TABLE `certificates` (
	`id` text PRIMARY KEY NOT NULL,
	`organization_id` text NOT NULL,
	`learner_id` text NOT NULL,
	`scheme_id` text NOT NULL,
	`scheme` text NOT NULL,
	`application_id` text,
	`standing` text NOT NULL,
	`jwt` text NOT NULL,
	`kid` text NOT NULL,
	`status_index` integer NOT NULL,
	`consent` text NOT NULL,
	`comment` text NOT NULL,
	`issued_by` text NOT NULL,
	`issued_at` integer NOT NULL,
	`expires_at` integer NOT NULL,
	`demo` integer DEFAULT false NOT NULL,
	FOREIGN KEY (`organization_id`) REFERENCES `organizations`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`application_id`) REFERENCES `applications`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`kid`) REFERENCES `issuer_keys`(`kid`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `certificates_of_learner` ON `certificates` (`learner_id`,`organization_id`);--> statement-breakpoint
CREATE INDEX `certificates_of_organization` ON `certificates` (`organization_id`,`issued_at`);--> statement-breakpoint
CREATE UNIQUE INDEX `certificates_status_once` ON `certificates` (`organization_id`,`status_index`);--> statement-breakpoint
CREATE TABLE `evidence` (
	`id` text PRIMARY KEY NOT NULL,
	`learner_id` text NOT NULL,
	`organization_id` text NOT NULL,
	`topic` text NOT NULL,
	`source` text NOT NULL,
	`work` text NOT NULL,
	`revision` integer NOT NULL,
	`counts` integer NOT NULL,
	`score` integer NOT NULL,
	`model` text NOT NULL,
	`hints` integer NOT NULL,
	`exposure` text NOT NULL,
	`safety_events` integer NOT NULL,
	`purpose` text NOT NULL,
	`at` integer NOT NULL,
	`versions` text NOT NULL,
	`detail` text NOT NULL,
	`written_at` integer NOT NULL,
	FOREIGN KEY (`organization_id`) REFERENCES `organizations`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `evidence_of_learner` ON `evidence` (`learner_id`,`organization_id`,`topic`,`at`);--> statement-breakpoint
CREATE INDEX `evidence_of_organization` ON `evidence` (`organization_id`,`at`);--> statement-breakpoint
CREATE UNIQUE INDEX `evidence_once` ON `evidence` (`work`,`topic`,`revision`);--> statement-breakpoint
CREATE TABLE `evidence_due` (
	`work` text PRIMARY KEY NOT NULL,
	`learner_id` text NOT NULL,
	`organization_id` text NOT NULL,
	`since` integer NOT NULL
);
--> statement-breakpoint
CREATE INDEX `evidence_due_of_organization` ON `evidence_due` (`organization_id`,`learner_id`);--> statement-breakpoint
CREATE TABLE `intake_tasks` (
	`intake_id` text NOT NULL,
	`place` integer NOT NULL,
	`pool_task_id` text NOT NULL,
	`attempt_id` text,
	`sitting_place` integer,
	`choice` text NOT NULL,
	`given_at` integer NOT NULL,
	PRIMARY KEY(`intake_id`, `place`),
	FOREIGN KEY (`intake_id`) REFERENCES `intakes`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`attempt_id`) REFERENCES `attempts`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `intake_tasks_attemptId_unique` ON `intake_tasks` (`attempt_id`);--> statement-breakpoint
CREATE INDEX `intake_tasks_of_pool` ON `intake_tasks` (`pool_task_id`);--> statement-breakpoint
CREATE TABLE `intakes` (
	`id` text PRIMARY KEY NOT NULL,
	`organization_id` text NOT NULL,
	`learner_id` text NOT NULL,
	`profile_id` text NOT NULL,
	`profile` text NOT NULL,
	`created_by` text NOT NULL,
	`created_at` integer NOT NULL,
	`token_hash` text,
	`link_ends_at` integer NOT NULL,
	`extra_time` real DEFAULT 0 NOT NULL,
	`started_at` integer,
	`ends_at` integer,
	`finished_at` integer,
	`end` text,
	`sitting_id` text,
	`outcome` text,
	`demo` integer DEFAULT false NOT NULL,
	FOREIGN KEY (`organization_id`) REFERENCES `organizations`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`sitting_id`) REFERENCES `sittings`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `intakes_tokenHash_unique` ON `intakes` (`token_hash`);--> statement-breakpoint
CREATE INDEX `intakes_of_organization` ON `intakes` (`organization_id`,`created_at`);--> statement-breakpoint
CREATE INDEX `intakes_of_learner` ON `intakes` (`learner_id`,`organization_id`);--> statement-breakpoint
CREATE UNIQUE INDEX `intakes_of_sitting` ON `intakes` (`sitting_id`);--> statement-breakpoint
CREATE TABLE `issuer_keys` (
	`kid` text PRIMARY KEY NOT NULL,
	`organization_id` text NOT NULL,
	`public_jwk` text NOT NULL,
	`sealed_private` text NOT NULL,
	`created_by` text NOT NULL,
	`created_at` integer NOT NULL,
	`retired_at` integer,
	`compromised_at` integer,
	FOREIGN KEY (`organization_id`) REFERENCES `organizations`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `issuer_keys_of_organization` ON `issuer_keys` (`organization_id`,`created_at`);--> statement-breakpoint
CREATE TABLE `observations` (
	`id` text PRIMARY KEY NOT NULL,
	`organization_id` text NOT NULL,
	`learner_id` text NOT NULL,
	`profile_id` text,
	`items` text NOT NULL,
	`unsafe` integer NOT NULL,
	`comment` text NOT NULL,
	`observed_by` text NOT NULL,
	`observed_at` integer NOT NULL,
	`written_at` integer NOT NULL,
	`taken_back_by` text,
	`taken_back_at` integer,
	`taken_back_reason` text,
	FOREIGN KEY (`organization_id`) REFERENCES `organizations`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `observations_of_learner` ON `observations` (`learner_id`,`organization_id`,`observed_at`);--> statement-breakpoint
CREATE TABLE `panel_judges` (
	`panel_id` text NOT NULL,
	`judge_id` text NOT NULL,
	PRIMARY KEY(`panel_id`, `judge_id`),
	FOREIGN KEY (`panel_id`) REFERENCES `panels`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `panel_judges_by_judge` ON `panel_judges` (`judge_id`);--> statement-breakpoint
CREATE TABLE `panel_ratings` (
	`panel_id` text NOT NULL,
	`judge_id` text NOT NULL,
	`round` integer NOT NULL,
	`task` integer NOT NULL,
	`expected` real NOT NULL,
	`rated_at` integer NOT NULL,
	PRIMARY KEY(`panel_id`, `judge_id`, `round`, `task`),
	FOREIGN KEY (`panel_id`) REFERENCES `panels`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `panels` (
	`id` text PRIMARY KEY NOT NULL,
	`organization_id` text NOT NULL,
	`scheme_id` text NOT NULL,
	`title` text NOT NULL,
	`tasks` text NOT NULL,
	`state` text NOT NULL,
	`created_by` text NOT NULL,
	`created_at` integer NOT NULL,
	`closed_at` integer,
	`adopted_version` integer,
	`demo` integer DEFAULT false NOT NULL,
	FOREIGN KEY (`organization_id`) REFERENCES `organizations`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `panels_of_organization` ON `panels` (`organization_id`,`created_at`);--> statement-breakpoint
CREATE TABLE `pool_tasks` (
	`id` text PRIMARY KEY NOT NULL,
	`use` text NOT NULL,
	`kind` text NOT NULL,
	`case_code` text,
	`spec` text,
	`topics` text NOT NULL,
	`difficulty` real NOT NULL,
	`features` text NOT NULL,
	`seconds` integer NOT NULL,
	`content_hash` text NOT NULL,
	`generator_version` integer NOT NULL,
	`exposures` integer DEFAULT 0 NOT NULL,
	`added_at` integer NOT NULL
);
--> statement-breakpoint
CREATE INDEX `pool_tasks_to_draw` ON `pool_tasks` (`use`,`content_hash`,`generator_version`);--> statement-breakpoint
CREATE TABLE `presentations` (
	`id` text PRIMARY KEY NOT NULL,
	`certificate_id` text NOT NULL,
	`nonce` text NOT NULL,
	`audience` text NOT NULL,
	`made_at` integer NOT NULL,
	`ends_at` integer NOT NULL,
	`used_at` integer,
	FOREIGN KEY (`certificate_id`) REFERENCES `certificates`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `presentations_once` ON `presentations` (`certificate_id`,`nonce`);--> statement-breakpoint
CREATE TABLE `role_profiles` (
	`id` text PRIMARY KEY NOT NULL,
	`organization_id` text NOT NULL,
	`profile_id` text NOT NULL,
	`version` integer NOT NULL,
	`body` text,
	`changed_by` text NOT NULL,
	`changed_at` integer NOT NULL,
	FOREIGN KEY (`organization_id`) REFERENCES `organizations`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `role_profiles_once` ON `role_profiles` (`organization_id`,`profile_id`,`version`);--> statement-breakpoint
CREATE TABLE `safety_states` (
	`learner_id` text NOT NULL,
	`organization_id` text NOT NULL,
	`recent` text NOT NULL,
	PRIMARY KEY(`organization_id`, `learner_id`),
	FOREIGN KEY (`organization_id`) REFERENCES `organizations`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `scheme_versions` (
	`id` text PRIMARY KEY NOT NULL,
	`organization_id` text NOT NULL,
	`scheme_id` text NOT NULL,
	`version` integer NOT NULL,
	`body` text NOT NULL,
	`changed_by` text NOT NULL,
	`changed_at` integer NOT NULL,
	`note` text NOT NULL,
	FOREIGN KEY (`organization_id`) REFERENCES `organizations`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `scheme_versions_once` ON `scheme_versions` (`organization_id`,`scheme_id`,`version`);--> statement-breakpoint
CREATE TABLE `sign_offs` (
	`id` text PRIMARY KEY NOT NULL,
	`organization_id` text NOT NULL,
	`learner_id` text NOT NULL,
	`profile_id` text NOT NULL,
	`profile` text NOT NULL,
	`standing` text NOT NULL,
	`comment` text NOT NULL,
	`observation_id` text,
	`signed_by` text NOT NULL,
	`signed_at` integer NOT NULL,
	`ends_at` integer NOT NULL,
	`taken_back_by` text,
	`taken_back_at` integer,
	`taken_back_reason` text,
	FOREIGN KEY (`organization_id`) REFERENCES `organizations`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`observation_id`) REFERENCES `observations`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `sign_offs_of_organization` ON `sign_offs` (`organization_id`,`profile_id`,`signed_at`);--> statement-breakpoint
CREATE INDEX `sign_offs_of_learner` ON `sign_offs` (`learner_id`,`organization_id`);--> statement-breakpoint
CREATE TABLE `topic_states` (
	`learner_id` text NOT NULL,
	`organization_id` text NOT NULL,
	`topic` text NOT NULL,
	`at` integer NOT NULL,
	`sum` blob NOT NULL,
	`count` integer NOT NULL,
	`weight` real NOT NULL,
	`cases` integer NOT NULL,
	`half_life_days` real NOT NULL,
	`rules` integer NOT NULL,
	PRIMARY KEY(`organization_id`, `learner_id`, `topic`),
	FOREIGN KEY (`organization_id`) REFERENCES `organizations`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `topic_states_of_learner` ON `topic_states` (`learner_id`);