global using FleetWake.Logbook.Entries;

// The house has a FactAttribute of its own, which names stored facts; in a specification [Fact] is the runner's.
