using System.Numerics;

namespace CalibGeom.Verification.Uncertainty;

/// <summary>
/// Random numbers that are the same on every machine and with every version of the runtime: xoshiro256** 1.0 (Blackman
/// and Vigna, 2018), its state filled by SplitMix64 from a seed. Not safe to share between threads.
/// </summary>
public sealed class SeededRandom
{
    private readonly ulong[] state = new ulong[4];
    private double spare;
    private bool hasSpare;

    /// <summary>A sequence.</summary>
    /// <param name="seed">The same seed gives the same numbers.</param>
    public SeededRandom(ulong seed)
    {
        for (int i = 0; i < state.Length; i++)
        {
            seed += 0x9E3779B97F4A7C15;
            ulong z = seed;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            state[i] = z ^ (z >> 31);
        }
    }

    /// <summary>The next 64 bits.</summary>
    public ulong NextBits()
    {
        ulong result = BitOperations.RotateLeft(state[1] * 5, 7) * 9;
        ulong shifted = state[1] << 17;
        state[2] ^= state[0];
        state[3] ^= state[1];
        state[1] ^= state[2];
        state[0] ^= state[3];
        state[2] ^= shifted;
        state[3] = BitOperations.RotateLeft(state[3], 45);
        return result;
    }

    /// <summary>Uniform from 0 (included) to 1 (excluded), in steps of 2^-53.</summary>
    public double Uniform() => (NextBits() >> 11) * (1.0 / (1L << 53));

    /// <summary>Uniform from one number (included) to another (excluded).</summary>
    /// <param name="low">The lower.</param>
    /// <param name="high">The higher.</param>
    public double Uniform(double low, double high) => low + (high - low) * Uniform();

    /// <summary>Standard normal, by the polar method of Marsaglia and Bray (1964).</summary>
    public double Normal()
    {
        if (hasSpare)
        {
            hasSpare = false;
            return spare;
        }
        double u,
            v,
            s;
        do
        {
            u = 2 * Uniform() - 1;
            v = 2 * Uniform() - 1;
            s = u * u + v * v;
        } while (s is >= 1 or 0);
        double factor = Math.Sqrt(-2 * Math.Log(s) / s);
        spare = v * factor;
        hasSpare = true;
        return u * factor;
    }

    /// <summary>Chi-squared, by the gamma method of Marsaglia and Tsang (2000).</summary>
    /// <param name="degreesOfFreedom">Above 0.</param>
    public double ChiSquared(double degreesOfFreedom)
    {
        double shape = degreesOfFreedom / 2;
        if (shape < 1)
            return ChiSquared(degreesOfFreedom + 2) * Math.Pow(1 - Uniform(), 1 / shape);
        double d = shape - 1.0 / 3,
            c = 1 / Math.Sqrt(9 * d);
        while (true)
        {
            double x = Normal(),
                v = 1 + c * x;
            if (v <= 0)
                continue;
            v = v * v * v;
            if (Math.Log(1 - Uniform()) < 0.5 * x * x + d * (1 - v + Math.Log(v)))
                return 2 * d * v;
        }
    }

    /// <summary>Student's t.</summary>
    /// <param name="degreesOfFreedom">Above 0.</param>
    public double Student(double degreesOfFreedom) =>
        Normal() / Math.Sqrt(ChiSquared(degreesOfFreedom) / degreesOfFreedom);
}
