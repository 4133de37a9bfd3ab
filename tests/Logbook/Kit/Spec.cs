using System.Text.Json;
using FleetWake.Logbook.Boats;
using Xunit.Sdk;

namespace FleetWake.Logbook.Tests;

/// <summary>Given(facts).When(command).Then(facts), or ThenRefuses(field, reason). What is not said to happen must not happen.</summary>
internal sealed class Spec
{
    private readonly Fleet _before;
    private Decision? _decision;

    private Spec(Fleet before) => _before = before;

    /// <summary>The records that are there already, each a command that was accepted.</summary>
    public static Spec Given(params ICommand[] records) => new(new Fleet().With(records));

    /// <summary>The record whose decision is specified.</summary>
    public Spec When<T>(T command, Arrival? arrival = null)
        where T : ICommand<T>
    {
        _decision = T.Decide(command, arrival ?? Dock.Arrived);
        return this;
    }

    /// <summary>It keeps exactly these facts on exactly these streams, in order.</summary>
    public Spec Then(params (string Stream, IFact Fact)[] facts)
    {
        Assert.Equal(facts.Select(f => $"{f.Stream} {Json(f.Fact)}"), Kept().Facts.Select(p => $"{p.Stream} {Json(p.Fact)}"));
        return this;
    }

    /// <summary>It refers to exactly these streams, by these fields.</summary>
    public Spec Naming(params (string Field, string Stream)[] references)
    {
        Assert.Equal(references, Kept().References.Select(r => (r.Field, r.Stream)));
        return this;
    }

    /// <summary>Once kept, the boat's record asks exactly these questions that it did not ask before.</summary>
    public void ThenAsks(string boat, params ContradictionKind[] kinds)
    {
        var open = _before.History(boat).Contradictions.Select(c => c.Question).ToHashSet();
        var after = _before.With(Kept().Facts).History(boat).Contradictions;
        Assert.Equal(kinds, after.Where(c => !open.Contains(c.Question)).Select(c => c.Kind));
    }

    /// <summary>It is refused, for exactly this reason at exactly this field and for no other.</summary>
    public void ThenRefuses(string field, string reason) => ThenRefuses((field, reason));

    /// <summary>It is refused, for exactly these reasons.</summary>
    public void ThenRefuses(params (string Field, string Reason)[] expected)
    {
        if (_decision is not Decision.Refuse refuse) throw new XunitException($"Expected a refusal {string.Join(", ", expected)}, but: {_decision?.ToString() ?? "no command"}");
        Assert.Equal(expected, refuse.Refusals.Select(r => (r.Field, r.Reason)));
        Assert.All(refuse.Refusals, r => Assert.True(r.Message.Length is > 10 and < 400, r.Message));
    }

    /// <summary>Each of these is refused, for exactly its one reason.</summary>
    public static void EachIsRefused<T>(params (T Command, string Field, string Reason)[] cases)
        where T : ICommand<T> =>
        Assert.All(cases, c => Given().When(c.Command).ThenRefuses(c.Field, c.Reason));

    internal static string Json(IFact fact) => JsonSerializer.Serialize(fact, LogbookJson.Options);

    private Decision.Keep Kept() => _decision switch
    {
        Decision.Keep keep => keep,
        Decision.Refuse refuse => throw new XunitException("Refused: " + string.Join("; ", refuse.Refusals)),
        _ => throw new XunitException("There was no When"),
    };
}
