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
        new(["Gannet"], "stainless prop bent on a rock two days ago, not looked at yet; a claim is open", Damage.Gannet),
        new(["Shag"], "strike looked at and cleared, but RPM stepped up with it", ClearedStrikes.Shag),
        new(["Tern", "Eider", "Shearwater", "Dunlin", "Murre"], "small strikes, each looked at and cleared; one paid for by its hirer", ClearedStrikes.Small),
        new(["Dotterel"], "touched bottom yesterday, no mark: recorded, nothing blocked", ClearedStrikes.NoMark),
        new(["Cormorant"], "spun hub: RPM up, speed down, hub slip seen, to come off", SpunHub.Cormorant),
        new(["Pelican"], "lugs: below its bottom, with a full load and growth on the blades", Lugging.Pelican),
        new(["Whimbrel"], "too much pitch, repitched, back inside its band; a loaner meanwhile", Repitch.Whimbrel),
        new(["Albatross"], "one prop at the shop now, due back in four days; a loaner meanwhile", Repitch.Albatross),
        new(["Curlew"], "two props by season, a mounting and a baseline for each", SeasonSwap.Curlew),
        new(["Oystercatcher", "Turnstone"], "one prop on two boats at once: a tag misread", TwoPlaces.Turnstone),
        new(["Godwit"], "an hour meter read without its decimal point", MeterSlip.Godwit),
        new(["Fulmar"], "a trial amended: a digit of the RPM", Corrections.Fulmar),
        new(["Scoter"], "an hour reading amended", Corrections.Scoter),
        new(["Guillemot"], "a strike amended: scuffed, not chipped; a new hub; a misreading settled", Corrections.Guillemot),
        new(["Booby", "Petrel"], "a strike retracted: it was the other boat's", Corrections.Booby),
        new(["Razorbill"], "an inspection retracted: recorded twice", Corrections.Razorbill),
        new(["Grebe"], "a retraction retracted: the reading stands again", Corrections.Grebe),
        new(["Skua"], "a trial held by the limiter", OddTrials.Limiter),
        new(["Egret"], "a part-throttle trial in a no-wake reach", OddTrials.PartThrottle),
        new(["Noddy"], "a trial of a single run; a strike in the hour that came twice", OddTrials.SingleRun),
        new(["Stilt"], "a trial with negative slip: km/h typed as knots; a prop found fitted", OddTrials.NegativeSlip),
        new(["Puffin", "Auklet", "Merganser", "Diver"], "six-monthly looks overdue", Overdue.Neglected),
        new(["Dovekie"], "records that came weeks before the boat's registration", OutOfOrder.Dovekie),
        new([], "two records held for a boat that nobody registered", OutOfOrder.Loaner),
        new(["Smew"], "a record sent twice; a new hour meter; a scuff cleared by a look at the dock", OutOfOrder.SentTwice),
        new(["Prion"], "laid up and relaunched, with a look between", LaidUpBoats.Prion),
        new(["Wigeon"], "laid up, back in twelve days: only the look before is due", LaidUpBoats.Wigeon),
        new(["Teal"], "relaunched ten days ago without a look", LaidUpBoats.Teal),
        new(["Pochard"], "sold: nothing is due any more", LaidUpBoats.Pochard),
        new(["Redshank", "Ruff"], "an engine moved to another boat with an open strike", MovedEngine.Redshank),
        new(["Phalarope"], "came from another dock", Workshop.Phalarope),
        new([], "tachometers checked", Workshop.Tachometers),
        new([], "docks, people, devices, prices and rules of the fleet's own", OfficePapers.Tell),
        new([], "a duty of the fleet's own, overdue on one boat", GearOil.Tell),
        new([], "parts on three shelves", PartsShelf.Tell),
        new([], "spare props, by dock", Spares.Tell),
        new([], "looks at handovers, one with a mark", Handovers.Saturdays),
        new([], "a weekend's records from a phone whose clock is a day ahead", OutOfOrder.WrongClock),
    ];

    /// <summary>Whether a story tells this boat's years.</summary>
    public static bool TellsYearsOf(BoatLine boat) => All.Any(s => s.Boats.Contains(boat.Name));
}
