package plan

// stack holds the levels against each other.
func (l *houseLoader) stack() {
}
