CREATE TRIGGER `evidence_is_not_changed` BEFORE UPDATE OF `id`, `organization_id`, `topic`, `source`, `work`, `revision`, `counts`, `score`, `model`, `hints`, `exposure`, `safety_events`, `purpose`, `at`, `versions`, `detail`, `written_at` ON `evidence` BEGIN SELECT RAISE(ABORT, 'Evidence is only added to'); END;--> statement-breakpoint
INSERT INTO `evidence_due` (`work`, `learner_id`, `organization_id`, `since`)
SELECT 'attempt ' || `attempts`.`id`, `attempts`.`learner_id`, `attempts`.`organization_id`, `calls`.`called_at`
FROM `calls` INNER JOIN `attempts` ON `attempts`.`id` = `calls`.`attempt_id`
WHERE `attempts`.`organization_id` IS NOT NULL
ON CONFLICT DO NOTHING;--> statement-breakpoint
INSERT INTO `evidence_due` (`work`, `learner_id`, `organization_id`, `since`)
SELECT 'sitting ' || `question_marks`.`sitting_id` || ' ' || `question_marks`.`place`, `sittings`.`learner_id`, `sittings`.`organization_id`, `question_marks`.`marked_at`
FROM `question_marks` INNER JOIN `sittings` ON `sittings`.`id` = `question_marks`.`sitting_id`
WHERE true
ON CONFLICT DO NOTHING;
