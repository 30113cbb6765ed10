CREATE TABLE `turn_results` (
	`turn_id` text PRIMARY KEY NOT NULL,
	`total` real NOT NULL,
	`waiting` integer NOT NULL,
	`tasks` text NOT NULL,
	FOREIGN KEY (`turn_id`) REFERENCES `turns`(`id`) ON UPDATE no action ON DELETE no action
);
