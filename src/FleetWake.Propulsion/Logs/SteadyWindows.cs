namespace FleetWake.Propulsion.Logs;

/// <summary>Finds the stretches over which series of readings stay within ranges, in one pass.</summary>
internal static class SteadyWindows
{
    /// <summary>A series and the range it may have, as a function of its highest value in the window.</summary>
    internal readonly record struct Series(double[] Values, Func<double, double> Range);

    /// <summary>
    /// The stretches, first to last index, none over another. From the left, each as long as it can be: when a reading would
    /// widen a range too far, what was held so far is a stretch if it lasted, and else its oldest readings are let go.
    /// </summary>
    internal static List<(int First, int Last)> Find(double[] seconds, double shortest, double largestStep, params Series[] series)
    {
        var found = new List<(int First, int Last)>();
        var extremes = Array.ConvertAll(series, s => new Extremes(s.Values));
        var first = 0;
        for (var i = 0; i < seconds.Length; i++)
        {
            if (i > first && seconds[i] - seconds[i - 1] > largestStep) Restart(i - 1, i);
            foreach (var extreme in extremes) extreme.Push(i);
            while (first < i && Broken())
            {
                if (Lasts(first, i - 1)) Restart(i - 1, i, push: true);
                else Forget(++first);
            }
        }

        if (seconds.Length > 0 && Lasts(first, seconds.Length - 1)) found.Add((first, seconds.Length - 1));
        return found;

        bool Lasts(int a, int b) => b - a >= 2 && seconds[b] - seconds[a] >= shortest;

        bool Broken()
        {
            for (var k = 0; k < series.Length; k++)
            {
                if (extremes[k].High - extremes[k].Low > series[k].Range(extremes[k].High)) return true;
            }

            return false;
        }

        void Restart(int last, int next, bool push = false)
        {
            if (Lasts(first, last)) found.Add((first, last));
            first = next;
            foreach (var extreme in extremes)
            {
                extreme.Clear();
                if (push) extreme.Push(next);
            }
        }

        void Forget(int from)
        {
            foreach (var extreme in extremes) extreme.Forget(from);
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

        internal void Clear()
        {
            _high.Clear();
            _low.Clear();
        }
    }
}
