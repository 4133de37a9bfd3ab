using System.Numerics;

namespace FleetWake.Propulsion.Trials;

/// <summary>Doubts as they are gathered: each once, told in the order of their declaration.</summary>
internal struct DoubtSet
{
    private uint _bits;

    internal void Add(TrialDoubt doubt, bool when)
    {
        if (when)
            _bits |= 1u << (int)doubt;
    }

    internal readonly TrialDoubt[] ToArray()
    {
        var doubts = new TrialDoubt[BitOperations.PopCount(_bits)];
        var rest = _bits;
        for (var i = 0; i < doubts.Length; i++, rest &= rest - 1)
            doubts[i] = (TrialDoubt)BitOperations.TrailingZeroCount(rest);
        return doubts;
    }
}
