using System.Diagnostics;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Fleet;
using FleetWake.Store.Findings;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Store.Telemetry;
using Marten;
using Marten.Services;
using Microsoft.Extensions.Logging;
using Npgsql;

namespace FleetWake.Store.Fleet;

/// <summary>
/// Fits what a fleet has shown of itself, and records it when it moved enough to matter. One worker fits a fleet at a time: it
/// holds the fleet's row of looks, which is free again the moment it dies, and records in that same transaction. The boats
/// are marked where every other mark is made, by the subscription that follows the record.
/// </summary>
public sealed partial class FleetFitStep(
    IDocumentStore store, NpgsqlDataSource source, FleetReading reading, FleetOperators operators, TimeProvider time, ILogger<FleetFitStep> log)
{
    /// <summary>Fits every fleet that is due. One fleet's failure does not keep the others from theirs.</summary>
    public async Task FitDueAsync(CancellationToken ct)
    {
        foreach (var card in await operators.AllAsync(ct))
        {
            try
            {
                if (await IsDueAsync(card, ct)) await FitAsync(card, FitWish.WhenDue, ct);
            }
            catch (Exception e) when (e is not OperationCanceledException && !FindingStep.IsDatabaseDown(e))
            {
                LogFailed(e, card.Id);
            }
        }
    }

    /// <summary>Fits one operator's fleet.</summary>
    /// <param name="card">The operator.</param>
    /// <param name="wish">When and what to record.</param>
    /// <param name="ct">Ends it; nothing is recorded then.</param>
    public async Task<FleetFit> FitAsync(OperatorCard card, FitWish wish, CancellationToken ct)
    {
        await FitLooks.MakeAsync(source, card.Id, ct);
        try
        {
            await using var connection = await source.OpenConnectionAsync(ct);
            await using var transaction = await connection.BeginTransactionAsync(ct);
            if (await FitLooks.ClaimAsync(connection, card.Id, wait: wish != FitWish.WhenDue, ct) is not { } look) return FleetFit.NotNow;
            var since = await FitLooks.SinceAsync(connection, card.Id, look, ct);
            await using var session = On(transaction, card.Id);
            var last = await FleetPriorBook.NewestFittedAsync(session, ct);
            // Whoever came second finds that it was done.
            if (wish == FitWish.WhenDue && !IsDue(card, look, since, last is not null)) return FleetFit.NotNow;

            var begun = time.GetTimestamp();
            using var span = FleetMeter.Spans.StartActivity("fit fleet");
            var (fit, leftOut) = await FitAsync(card, last, wish, ct);
            await FitLooks.KeepAsync(connection, card.Id, new FitLook(since.UpTo, look.Records + since.Records, time.GetUtcNow(), leftOut, null, null), ct);
            if (fit is { Outcome: FitOutcome.Recorded, Newest: { } fitted }) session.Events.Append(StreamName.Fleet, fitted.Number, fitted);
            await session.SaveChangesAsync(ct);
            await transaction.CommitAsync(ct);
            FleetMeter.Fits.Add(1, FleetMeter.Outcome(Words.Of(fit.Outcome)));
            FleetMeter.FitDuration.Record(time.GetElapsedTime(begun).TotalSeconds);
            LogFitted(card.Id, Words.Of(fit.Outcome), fit.Why);
            return fit;
        }
        catch (Exception e) when (e is not OperationCanceledException && !FindingStep.IsDatabaseDown(e))
        {
            FleetMeter.Fits.Add(1, FleetMeter.Outcome("failed"));
            await FitLooks.FailedAsync(source, card.Id, time.GetUtcNow(), e.Message, CancellationToken.None);
            throw;
        }
    }

    private bool IsDue(OperatorCard card, FitLook look, RecordsSince since, bool fitted) =>
        FitDue.Of(look, since, fitted, time.GetUtcNow(), TimeZoneInfo.FindSystemTimeZoneById(card.Zone));

    /// <summary>Asked each minute, so it holds nothing and reads no fit.</summary>
    private async Task<bool> IsDueAsync(OperatorCard card, CancellationToken ct)
    {
        var look = await FitLooks.OfAsync(source, card.Id, ct);
        await using var connection = await source.OpenConnectionAsync(ct);
        var since = await FitLooks.SinceAsync(connection, card.Id, look, ct);
        await using var session = store.QuerySession(card.Id);
        return IsDue(card, look, since, await FleetPriorBook.NewestNumberAsync(session, ct) > 0);
    }

    private async Task<(FleetFit Fit, string? LeftOut)> FitAsync(OperatorCard card, FleetPriorFitted? last, FitWish wish, CancellationToken ct)
    {
        var boats = (await reading.StreamsAsync(card.Id, StreamName.Boat(""), ct)).Select(s => StreamName.BoatOf(s)!);
        var fleet = await FleetHistories.ReadAsync(store, card.Id, boats, ct);
        var fitted = Fitted(fleet, (last?.Number ?? 0) + 1, ProgramEntry.At(time.GetUtcNow(), card.Zone));
        foreach (var (boat, why) in fleet.LeftOut) LogLeftOut(why, boat, card.Id);
        string? leftOut = fleet.LeftOut.Count == 0 ? null : string.Join('\n', fleet.LeftOut.Select(l => $"{l.Boat} ({l.Why.Message})"));
        return (Judged(last, fitted, fleet.Told, wish) with { LeftOut = [.. fleet.LeftOut.Select(l => l.Boat)] }, leftOut);
    }

    private static FleetPriorFitted Fitted(FleetHistories fleet, int number, Entry entry)
    {
        while (true)
        {
            try
            {
                return FitFleetPrior.Of(fleet.Told, number, entry);
            }
            catch (Exception e) when (e is not OutOfMemoryException && fleet.LeaveOutUnassessable())
            {
                // One boat's history broke it: again without that one.
            }
        }
    }

    private static FleetFit Judged(FleetPriorFitted? last, FleetPriorFitted fitted, IReadOnlyList<BoatHistory> fleet, FitWish wish)
    {
        // Nothing but the trade's expectation would be written down.
        if (last is null && fitted.Trials == 0) return new(FitOutcome.NothingToLearn, null, "no boat has a usable trial yet");
        if (last is null) return new(FitOutcome.Recorded, fitted, "the first");
        if (FitMoved.Why(last, fitted, fleet) is { } why) return new(FitOutcome.Recorded, fitted, why);
        return wish == FitWish.Always
            ? new(FitOutcome.Recorded, fitted, "asked for, though nothing moved enough to matter")
            : new(FitOutcome.NotMoved, last, "nothing moved enough to matter");
    }

    private IDocumentSession On(NpgsqlTransaction transaction, string @operator)
    {
        var options = SessionOptions.ForTransaction(transaction);
        options.TenantId = @operator;
        options.Tracking = DocumentTracking.None;
        return store.OpenSession(options);
    }

    [LoggerMessage(Level = LogLevel.Information, Message = "Fleet of {Operator} fitted: {Outcome} ({Why}).")]
    private partial void LogFitted(string @operator, string outcome, string why);

    [LoggerMessage(Level = LogLevel.Error, Message = "Boat {Boat} was left out of the fit of {Operator}'s fleet: its history cannot be told or assessed. The others are in it.")]
    private partial void LogLeftOut(Exception e, string boat, string @operator);

    [LoggerMessage(Level = LogLevel.Error, Message = "The fleet of {Operator} could not be fitted; its findings stay under the fit before, and it is tried again in an hour.")]
    private partial void LogFailed(Exception e, string @operator);
}
