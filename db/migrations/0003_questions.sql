CREATE TABLE `manual_marks` (
	`sitting_id` text NOT NULL,
	`place` integer NOT NULL,
	`seq` integer NOT NULL,
	`score` integer NOT NULL,
	`comment` text NOT NULL,
	`marked_by` text NOT NULL,
	`marked_at` integer NOT NULL,
	PRIMARY KEY(`sitting_id`, `place`, `seq`),
	FOREIGN KEY (`sitting_id`) REFERENCES `sittings`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `pictures` (
	`id` text PRIMARY KEY NOT NULL,
	`organization_id` text NOT NULL,
	`uploaded_by` text NOT NULL,
	`width` integer NOT NULL,
	`height` integer NOT NULL,
	`bytes` integer NOT NULL,
	`uploaded_at` integer NOT NULL,
	FOREIGN KEY (`organization_id`) REFERENCES `organizations`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `question_marks` (
	`sitting_id` text NOT NULL,
	`place` integer NOT NULL,
	`answer` text,
	`asked` text NOT NULL,
	`mark` text NOT NULL,
	`marked_at` integer NOT NULL,
	PRIMARY KEY(`sitting_id`, `place`),
	FOREIGN KEY (`sitting_id`) REFERENCES `sittings`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `sitting_answers` (
	`sitting_id` text NOT NULL,
	`place` integer NOT NULL,
	`seq` integer NOT NULL,
	`key` text NOT NULL,
	`body` text NOT NULL,
	`answered_at` integer NOT NULL,
	PRIMARY KEY(`sitting_id`, `seq`),
	FOREIGN KEY (`sitting_id`) REFERENCES `sittings`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `sitting_answers_of_place` ON `sitting_answers` (`sitting_id`,`place`,`seq`);--> statement-breakpoint
CREATE UNIQUE INDEX `sitting_answers_once` ON `sitting_answers` (`sitting_id`,`key`);--> statement-breakpoint
CREATE TABLE `sitting_questions` (
	`sitting_id` text NOT NULL,
	`place` integer NOT NULL,
	`spec` text,
	`written_version_id` text,
	`seed` text NOT NULL,
	`question_version` integer NOT NULL,
	`question_hash` text NOT NULL,
	`flagged` integer DEFAULT false NOT NULL,
	`asked_at` integer NOT NULL,
	PRIMARY KEY(`sitting_id`, `place`),
	FOREIGN KEY (`sitting_id`) REFERENCES `sittings`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`written_version_id`) REFERENCES `written_versions`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `sitting_questions_of_version` ON `sitting_questions` (`written_version_id`);--> statement-breakpoint
CREATE TABLE `sittings` (
	`id` text PRIMARY KEY NOT NULL,
	`learner_id` text NOT NULL,
	`organization_id` text NOT NULL,
	`key` text NOT NULL,
	`mode` text NOT NULL,
	`topics` text NOT NULL,
	`demo` integer DEFAULT false NOT NULL,
	`created_at` integer NOT NULL,
	`closes_at` integer,
	`handed_in_at` integer,
	FOREIGN KEY (`organization_id`) REFERENCES `organizations`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `sittings_newest` ON `sittings` (`learner_id`,`created_at`);--> statement-breakpoint
CREATE UNIQUE INDEX `sittings_once` ON `sittings` (`learner_id`,`key`);--> statement-breakpoint
CREATE TABLE `written_questions` (
	`id` text PRIMARY KEY NOT NULL,
	`organization_id` text NOT NULL,
	`created_by` text NOT NULL,
	`created_at` integer NOT NULL,
	FOREIGN KEY (`organization_id`) REFERENCES `organizations`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `written_questions_of_organization` ON `written_questions` (`organization_id`,`created_at`);--> statement-breakpoint
CREATE TABLE `written_versions` (
	`id` text PRIMARY KEY NOT NULL,
	`question_id` text NOT NULL,
	`number` integer NOT NULL,
	`state` text NOT NULL,
	`body` text NOT NULL,
	`title` text NOT NULL,
	`form` text NOT NULL,
	`topics` text NOT NULL,
	`written_by` text NOT NULL,
	`changed_at` integer NOT NULL,
	`reviewed_by` text,
	`reviewed_at` integer,
	`review_note` text,
	FOREIGN KEY (`question_id`) REFERENCES `written_questions`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `written_versions_by_state` ON `written_versions` (`state`);--> statement-breakpoint
CREATE UNIQUE INDEX `written_versions_once` ON `written_versions` (`question_id`,`number`);--> statement-breakpoint
DROP INDEX `attempts_newest`;--> statement-breakpoint
CREATE INDEX `attempts_of_learner` ON `attempts` (`learner_id`,`organization_id`,`created_at`);