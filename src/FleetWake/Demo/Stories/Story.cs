namespace FleetWake.Demo;

/// <summary>Something worth seeing in the record.</summary>
/// <param name="Boats">The boats it is about; it tells the whole years of these.</param>
/// <param name="See">What a reader should see.</param>
/// <param name="Tell">Writes it.</param>
internal sealed record Story(IReadOnlyList<string> Boats, string See, Action<Notebook> Tell)
{
    /// <summary>All stories. Boats that stand in none are healthy and ordinary.</summary>
    public static IReadOnlyList<Story> All { get; } =
    [
        new(["Sanderling"], "worn skiff: RPM creeps up and leaves the band in about 75 engine hours", WornProps.Skiff),
        new(["Plover"], "drifts up, about 150 h left", WornProps.Plover),
        new(["Avocet"], "drifts up, about 220 h left", WornProps.Avocet),
        new(["Heron"], "twin: only the starboard prop drifts, about 300 h left", WornProps.Heron),
        new(["Knot"], "worn right through: already over the top of its band", WornProps.Knot),
        new(["Gannet"], "stainless prop bent on a rock two days ago, not looked at yet", StruckStainless.Gannet),
        new(["Shag"], "strike looked at and cleared, but RPM stepped up with it", ClearedStrikes.Shag),
        new(["Tern", "Eider", "Shearwater", "Dunlin", "Murre"], "small strikes, each looked at and cleared", ClearedStrikes.Small),
        new(["Dotterel"], "touched bottom yesterday, no mark: recorded, nothing blocked", ClearedStrikes.NoMark),
        new(["Cormorant"], "spun hub: RPM up, speed down, hub slip seen, to come off", SpunHub.Cormorant),
        new(["Pelican"], "lugs: below its bottom, with a full load and growth on the blades", Lugging.Pelican),
        new(["Whimbrel"], "too much pitch, repitched, back inside its band; a loaner meanwhile", Repitch.Whimbrel),
        new(["Curlew"], "two props by season, a mounting and a baseline for each", SeasonSwap.Curlew),
        new(["Oystercatcher", "Turnstone"], "one prop on two boats at once: a tag misread", TwoPlaces.Turnstone),
        new(["Godwit"], "an hour meter read without its decimal point", MeterSlip.Godwit),
        new(["Fulmar"], "a trial amended: a digit of the RPM", Corrections.Fulmar),
        new(["Scoter"], "an hour reading amended", Corrections.Scoter),
        new(["Guillemot"], "a strike amended: scuffed, not chipped", Corrections.Guillemot),
        new(["Booby", "Petrel"], "a strike retracted: it was the other boat's", Corrections.Booby),
        new(["Razorbill"], "an inspection retracted: recorded twice", Corrections.Razorbill),
        new(["Grebe"], "a retraction retracted: the reading stands again", Corrections.Grebe),
        new(["Skua"], "a trial held by the limiter", OddTrials.Limiter),
        new(["Egret"], "a part-throttle trial in a no-wake reach", OddTrials.PartThrottle),
        new(["Noddy"], "a trial of a single run; a strike in the hour that came twice", OddTrials.SingleRun),
        new(["Stilt"], "a trial with negative slip: km/h typed as knots", OddTrials.NegativeSlip),
        new(["Puffin", "Auklet", "Merganser", "Diver"], "six-monthly looks overdue", Overdue.Neglected),
        new(["Dovekie"], "records that came weeks before the boat's registration", OutOfOrder.Dovekie),
        new([], "two records held for a boat that nobody registered", OutOfOrder.Loaner),
        new(["Smew"], "a record sent twice; it counts once", OutOfOrder.SentTwice),
        new([], "a weekend's records from a phone whose clock is a day ahead", OutOfOrder.WrongClock),
    ];

    /// <summary>Whether a story tells this boat's years.</summary>
    public static bool TellsYearsOf(BoatLine boat) => All.Any(s => s.Boats.Contains(boat.Name));
}
