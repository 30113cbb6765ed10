ALTER TABLE `attempts` ADD `difficulty` real;--> statement-breakpoint
ALTER TABLE `attempts` ADD `features` text;--> statement-breakpoint
ALTER TABLE `attempts` ADD `coached` integer DEFAULT false NOT NULL;