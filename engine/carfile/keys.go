package carfile

// The members of each group of the file. The JSON Schema of the site lists the same
// names, and a test compares the two.
var (
	fileKeys = []string{"format", "asked_in", "bodies", "made", "life", "earlier_work", "earlier_work_year", "covered", "hit", "all_there", "standard", "scope", "another_body", "options", "looks",
		"answers_checked", "stages", "survey", "opened", "whole_car", "survey_car", "strip_hours", "ways", "came_to"}
	madeKeys      = []string{"year", "decade", "not_sure"}
	lifeKeys      = []string{"place", "shore", "kept", "road_years", "years"}
	lookKeys      = []string{"look", "on", "result", "by"}
	stageKeys     = []string{"stage", "on", "rates", "figures"}
	recordKeys    = []string{"on", "stage", "condition", "finding", "dent", "also", "lead_failed", "panel_fit", "could_not_see", "sure", "note", "photo", "at", "was"}
	wasKeys       = []string{"condition", "at"}
	openedKeys    = []string{"box", "at"}
	hitKeys       = []string{"answer", "where"}
	surveyCarKeys = []string{"zones", "square"}
	choiceKeys    = []string{"on", "way", "by"}
)
