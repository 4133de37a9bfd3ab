namespace FleetWake.Propulsion.Logs;

/// <summary>Finds the stretches over which series of readings stay within ranges.</summary>
internal static class SteadyWindows
{
    /// <summary>A series and the range it may have, as a function of its highest value in the window.</summary>
    internal readonly record struct Series(double[] Values, Func<double, double> Range);

    /// <summary>
    /// The stretches, first to last index, in their order and none over another: the longest first, then the longest of what
    /// is left between. Taken from the left instead, a run would be parted where the last of the boat's speeding up, which
    /// had just fitted in, no longer did.
    /// </summary>
    internal static List<(int First, int Last)> Find(double[] seconds, double shortest, double largestStep, params Series[] series)
    {
        var found = new List<(int First, int Last)>();
        var free = new Stack<(int From, int End)>([(0, seconds.Length)]);
        while (free.TryPop(out var part))
        {
            var before = found.Count;
            var taken = new bool[part.End - part.From];
            foreach (var (first, last) in Maximal(part.From, part.End, seconds, largestStep, series)
                .Where(w => w.Last - w.First >= 2 && seconds[w.Last] - seconds[w.First] >= shortest)
                .OrderByDescending(w => seconds[w.Last] - seconds[w.First]))
            {
                // Those taken are no shorter, so that one that lies over this covers an end of it.
                if (taken[first - part.From] || taken[last - part.From]) continue;
                Array.Fill(taken, true, first - part.From, last - first + 1);
                found.Add((first, last));
            }

            if (found.Count == before) continue;
            for (var i = 0; i < taken.Length;)
            {
                var end = Array.IndexOf(taken, true, i);
                if (end < 0) end = taken.Length;
                if (end - i > 2) free.Push((part.From + i, part.From + end));
                for (i = end; i < taken.Length && taken[i]; i++)
                {
                }
            }
        }

        found.Sort();
        return found;
    }

    /// <summary>The windows within ranges that cannot be widened to either side, in one pass.</summary>
    private static List<(int First, int Last)> Maximal(int from, int end, double[] seconds, double largestStep, Series[] series)
    {
        var windows = new List<(int First, int Last)>();
        var extremes = Array.ConvertAll(series, s => new Extremes(s.Values));
        var first = from;
        for (var i = from; i < end; i++)
        {
            var before = first;
            if (i > from && seconds[i] - seconds[i - 1] > largestStep) first = i;
            foreach (var extreme in extremes)
            {
                extreme.Forget(first);
                extreme.Push(i);
            }

            while (first < i && Broken())
            {
                first++;
                foreach (var extreme in extremes) extreme.Forget(first);
            }

            if (first != before) windows.Add((before, i - 1));
        }

        if (end > from) windows.Add((first, end - 1));
        return windows;

        bool Broken()
        {
            for (var k = 0; k < series.Length; k++)
            {
                if (extremes[k].High - extremes[k].Low > series[k].Range(extremes[k].High)) return true;
            }

            return false;
        }
    }

    /// <summary>Highest and lowest of a sliding window, each kept as a queue of what may yet become it.</summary>
    private sealed class Extremes(double[] values)
    {
        private readonly LinkedList<int> _high = new();
        private readonly LinkedList<int> _low = new();

        internal double High => values[_high.First!.Value];

        internal double Low => values[_low.First!.Value];

        internal void Push(int i)
        {
            while (_high.Last is { } h && values[h.Value] <= values[i]) _high.RemoveLast();
            while (_low.Last is { } l && values[l.Value] >= values[i]) _low.RemoveLast();
            _high.AddLast(i);
            _low.AddLast(i);
        }

        internal void Forget(int from)
        {
            while (_high.First is { } h && h.Value < from) _high.RemoveFirst();
            while (_low.First is { } l && l.Value < from) _low.RemoveFirst();
        }
    }
}
