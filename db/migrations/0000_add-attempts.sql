CREATE TABLE `acts` (
	`attempt_id` text NOT NULL,
	`seq` integer NOT NULL,
	`key` text NOT NULL,
	`kind` text NOT NULL,
	`body` text NOT NULL,
	`created_at` integer NOT NULL,
	PRIMARY KEY(`attempt_id`, `seq`),
	FOREIGN KEY (`attempt_id`) REFERENCES `attempts`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `acts_once` ON `acts` (`attempt_id`,`key`);--> statement-breakpoint
CREATE TABLE `attempts` (
	`id` text PRIMARY KEY NOT NULL,
	`learner_id` text NOT NULL,
	`key` text NOT NULL,
	`case_code` text NOT NULL,
	`generator_version` integer NOT NULL,
	`content_hash` text NOT NULL,
	`demo` integer DEFAULT false NOT NULL,
	`created_at` integer NOT NULL
);
--> statement-breakpoint
CREATE INDEX `attempts_newest` ON `attempts` (`learner_id`,`created_at`);--> statement-breakpoint
CREATE UNIQUE INDEX `attempts_once` ON `attempts` (`learner_id`,`key`);--> statement-breakpoint
CREATE TABLE `calls` (
	`attempt_id` text PRIMARY KEY NOT NULL,
	`seq` integer NOT NULL,
	`key` text NOT NULL,
	`body` text NOT NULL,
	`grade` text NOT NULL,
	`total` real NOT NULL,
	`called_at` integer NOT NULL,
	FOREIGN KEY (`attempt_id`) REFERENCES `attempts`(`id`) ON UPDATE no action ON DELETE no action
);
