using FleetWake.Logbook.Findings;
using FleetWake.Reports.Digests;

namespace FleetWake.Web.Office.Boat;

/// <summary>What one more trial would be worth, in the words of the digest.</summary>
internal static class TrialWorth
{
    public static string Sentence(NextTrialCard card) => $"{TrialsWorth.Decides(card)}; {TrialsWorth.Shows(card)}.";
}
