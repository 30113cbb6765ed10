CREATE TABLE `appeals` (
	`id` text PRIMARY KEY NOT NULL,
	`organization_id` text NOT NULL,
	`learner_id` text NOT NULL,
	`attempt_id` text,
	`sitting_id` text,
	`place` integer,
	`note` text NOT NULL,
	`state` text NOT NULL,
	`made_at` integer NOT NULL,
	`due_at` integer NOT NULL,
	`answer` text,
	`decided_by` text,
	`decided_at` integer,
	FOREIGN KEY (`organization_id`) REFERENCES `organizations`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`attempt_id`) REFERENCES `attempts`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`sitting_id`) REFERENCES `sittings`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `appeals_of_organization` ON `appeals` (`organization_id`,`state`,`due_at`);--> statement-breakpoint
CREATE INDEX `appeals_of_learner` ON `appeals` (`learner_id`);--> statement-breakpoint
CREATE TABLE `assigned_classes` (
	`assignment_id` text NOT NULL,
	`class_id` text NOT NULL,
	PRIMARY KEY(`assignment_id`, `class_id`),
	FOREIGN KEY (`assignment_id`) REFERENCES `assignments`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`class_id`) REFERENCES `classes`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `assigned_classes_by_class` ON `assigned_classes` (`class_id`);--> statement-breakpoint
CREATE TABLE `assigned_people` (
	`assignment_id` text NOT NULL,
	`user_id` text NOT NULL,
	`named` integer NOT NULL,
	`extra_time` real DEFAULT 0 NOT NULL,
	PRIMARY KEY(`assignment_id`, `user_id`),
	FOREIGN KEY (`assignment_id`) REFERENCES `assignments`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`user_id`) REFERENCES `users`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `assigned_people_by_user` ON `assigned_people` (`user_id`);--> statement-breakpoint
CREATE TABLE `assignments` (
	`id` text PRIMARY KEY NOT NULL,
	`organization_id` text NOT NULL,
	`set_version_id` text NOT NULL,
	`title` text NOT NULL,
	`rules` text NOT NULL,
	`opens_at` integer NOT NULL,
	`closes_at` integer NOT NULL,
	`demo` integer DEFAULT false NOT NULL,
	`created_by` text NOT NULL,
	`created_at` integer NOT NULL,
	`archived_at` integer,
	FOREIGN KEY (`organization_id`) REFERENCES `organizations`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`set_version_id`) REFERENCES `set_versions`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `assignments_of_organization` ON `assignments` (`organization_id`,`closes_at`);--> statement-breakpoint
CREATE TABLE `calibrations` (
	`id` text PRIMARY KEY NOT NULL,
	`organization_id` text NOT NULL,
	`item` text NOT NULL,
	`difficulty` real NOT NULL,
	`standard_error` real NOT NULL,
	`answers` integer NOT NULL,
	`accepted_by` text NOT NULL,
	`accepted_at` integer NOT NULL,
	FOREIGN KEY (`organization_id`) REFERENCES `organizations`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `calibrations_of_item` ON `calibrations` (`organization_id`,`item`,`accepted_at`);--> statement-breakpoint
CREATE TABLE `comments` (
	`id` text PRIMARY KEY NOT NULL,
	`attempt_id` text,
	`sitting_id` text,
	`place` integer,
	`seq` integer,
	`text` text NOT NULL,
	`written_by` text NOT NULL,
	`written_at` integer NOT NULL,
	FOREIGN KEY (`attempt_id`) REFERENCES `attempts`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`sitting_id`) REFERENCES `sittings`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `comments_on_attempt` ON `comments` (`attempt_id`);--> statement-breakpoint
CREATE INDEX `comments_on_sitting` ON `comments` (`sitting_id`);--> statement-breakpoint
CREATE TABLE `nudges` (
	`id` text PRIMARY KEY NOT NULL,
	`assignment_id` text NOT NULL,
	`user_id` text NOT NULL,
	`text` text NOT NULL,
	`sent_by` text NOT NULL,
	`sent_at` integer NOT NULL,
	`read_at` integer,
	FOREIGN KEY (`assignment_id`) REFERENCES `assignments`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`user_id`) REFERENCES `users`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `nudges_to` ON `nudges` (`assignment_id`,`user_id`);--> statement-breakpoint
CREATE TABLE `overrides` (
	`id` text PRIMARY KEY NOT NULL,
	`attempt_id` text,
	`sitting_id` text,
	`place` integer,
	`part` text,
	`points` real,
	`reason` text NOT NULL,
	`given_by` text NOT NULL,
	`given_at` integer NOT NULL,
	FOREIGN KEY (`attempt_id`) REFERENCES `attempts`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`sitting_id`) REFERENCES `sittings`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `overrides_on_attempt` ON `overrides` (`attempt_id`);--> statement-breakpoint
CREATE INDEX `overrides_on_sitting` ON `overrides` (`sitting_id`);--> statement-breakpoint
CREATE TABLE `regrades` (
	`id` text PRIMARY KEY NOT NULL,
	`assignment_id` text NOT NULL,
	`change` text NOT NULL,
	`reason` text NOT NULL,
	`made_by` text NOT NULL,
	`made_at` integer NOT NULL,
	`undone_by` text,
	`undone_at` integer,
	FOREIGN KEY (`assignment_id`) REFERENCES `assignments`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `regrades_of_assignment` ON `regrades` (`assignment_id`,`made_at`);--> statement-breakpoint
CREATE TABLE `second_marks` (
	`sitting_id` text NOT NULL,
	`place` integer NOT NULL,
	`score` integer NOT NULL,
	`comment` text NOT NULL,
	`marked_by` text NOT NULL,
	`marked_at` integer NOT NULL,
	FOREIGN KEY (`sitting_id`) REFERENCES `sittings`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `second_marks_once` ON `second_marks` (`sitting_id`,`place`);--> statement-breakpoint
CREATE TABLE `set_versions` (
	`id` text PRIMARY KEY NOT NULL,
	`set_id` text NOT NULL,
	`number` integer NOT NULL,
	`body` text NOT NULL,
	`written_by` text NOT NULL,
	`changed_at` integer NOT NULL,
	`frozen_at` integer,
	FOREIGN KEY (`set_id`) REFERENCES `sets`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `set_versions_once` ON `set_versions` (`set_id`,`number`);--> statement-breakpoint
CREATE TABLE `sets` (
	`id` text PRIMARY KEY NOT NULL,
	`organization_id` text NOT NULL,
	`created_by` text NOT NULL,
	`created_at` integer NOT NULL,
	`shared_at` integer,
	`archived_at` integer,
	FOREIGN KEY (`organization_id`) REFERENCES `organizations`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `sets_of_organization` ON `sets` (`organization_id`,`created_at`);--> statement-breakpoint
CREATE TABLE `turn_tasks` (
	`turn_id` text NOT NULL,
	`place` integer NOT NULL,
	`attempt_id` text,
	`sitting_place` integer,
	PRIMARY KEY(`turn_id`, `place`),
	FOREIGN KEY (`turn_id`) REFERENCES `turns`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`attempt_id`) REFERENCES `attempts`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `turn_tasks_attemptId_unique` ON `turn_tasks` (`attempt_id`);--> statement-breakpoint
CREATE TABLE `turns` (
	`id` text PRIMARY KEY NOT NULL,
	`assignment_id` text NOT NULL,
	`learner_id` text NOT NULL,
	`organization_id` text NOT NULL,
	`number` integer NOT NULL,
	`sitting_id` text,
	`demo` integer DEFAULT false NOT NULL,
	`started_at` integer NOT NULL,
	`ends_at` integer NOT NULL,
	`handed_in_at` integer,
	FOREIGN KEY (`assignment_id`) REFERENCES `assignments`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`organization_id`) REFERENCES `organizations`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`sitting_id`) REFERENCES `sittings`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `turns_of_learner` ON `turns` (`learner_id`,`organization_id`);--> statement-breakpoint
CREATE UNIQUE INDEX `turns_once` ON `turns` (`assignment_id`,`learner_id`,`number`);--> statement-breakpoint
CREATE UNIQUE INDEX `turns_of_sitting` ON `turns` (`sitting_id`);--> statement-breakpoint
ALTER TABLE `classes` ADD `time_zone` text;