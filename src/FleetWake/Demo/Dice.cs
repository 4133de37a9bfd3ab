using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;

namespace FleetWake.Demo;

/// <summary>
/// Chance that falls the same way every time. Each boat has dice of its own, seeded by its name,
/// so that a change to one boat's story leaves the others as they were.
/// The generator is splitmix64 (Steele, Lea and Flood 2014), which is short and does not change with the runtime.
/// </summary>
internal sealed class Dice(string seed)
{
    private ulong state = BinaryPrimitives.ReadUInt64BigEndian(SHA256.HashData(Encoding.UTF8.GetBytes(InventedFleet.OperatorName + "/" + seed)));

    /// <summary>A number from 0 up to but not including 1.</summary>
    public double Unit()
    {
        state += 0x9E3779B97F4A7C15UL;
        var z = state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return ((z ^ (z >> 31)) >> 11) * (1.0 / (1UL << 53));
    }

    /// <summary>A number between two others.</summary>
    public double Between(double least, double most) => least + (most - least) * Unit();

    /// <summary>A whole number, both ends included.</summary>
    public int Whole(int least, int most) => least + (int)(Unit() * (most - least + 1));

    /// <summary>True with this chance.</summary>
    public bool Chance(double chance) => Unit() < chance;

    /// <summary>One of several.</summary>
    public T Pick<T>(IReadOnlyList<T> items) => items[Whole(0, items.Count - 1)];

    /// <summary>Scatter about 0 with about this standard deviation: the sum of three throws, so never beyond three of them.</summary>
    public double Scatter(double deviation) => deviation * 2 * (Unit() + Unit() + Unit() - 1.5);
}
