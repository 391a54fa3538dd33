package practice

import "time"

// Holiday reports whether offices of the United States are shut for a federal holiday on a weekday: 5 U.S.C. 6103(a); one on a Saturday is kept on the Friday before by
// 6103(b), one on a Sunday on the Monday after by Executive Order 11582. A locating service may keep fewer: the call then comes earlier than it need.
func Holiday(day time.Time) bool {
	week := (day.Day() + 6) / 7 // which of its weekdays in the month
	switch day.Weekday() {
	case time.Monday:
		switch day.Month() {
		case time.January, time.February: // Martin Luther King, Washington
			return week == 3 || fixed(day) || fixed(day.AddDate(0, 0, -1))
		case time.May: // Memorial Day
			return day.AddDate(0, 0, 7).Month() == time.June
		case time.September: // Labor Day
			return week == 1
		case time.October: // Columbus Day
			return week == 2
		}
		return fixed(day) || fixed(day.AddDate(0, 0, -1))
	case time.Thursday: // Thanksgiving
		return fixed(day) || day.Month() == time.November && week == 4
	case time.Friday:
		return fixed(day) || fixed(day.AddDate(0, 0, 1))
	}
	return fixed(day)
}

// fixed reports whether a day is a federal holiday by its date: New Year, Juneteenth, Independence, Veterans, Christmas.
func fixed(day time.Time) bool {
	switch month, d := day.Month(), day.Day(); d {
	case 1:
		return month == time.January
	case 4:
		return month == time.July
	case 11:
		return month == time.November
	case 19:
		return month == time.June
	case 25:
		return month == time.December
	}
	return false
}
