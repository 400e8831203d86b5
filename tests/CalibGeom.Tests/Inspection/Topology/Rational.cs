using System.Numerics;

namespace CalibGeom.Tests.Inspection.Topology;

/// <summary>An exact fraction.</summary>
internal readonly record struct Rational
{
    private readonly BigInteger over;
    private readonly BigInteger under;

    internal Rational(BigInteger over, BigInteger under)
    {
        BigInteger common = BigInteger.GreatestCommonDivisor(over, under) * (under.Sign < 0 ? -1 : 1);
        (this.over, this.under) = (over / common, under / common);
    }

    internal int Sign => over.Sign;

    public static implicit operator Rational(int value) => new(value, 1);

    public static Rational operator +(Rational a, Rational b) =>
        new(a.over * b.under + b.over * a.under, a.under * b.under);

    public static Rational operator -(Rational a, Rational b) =>
        new(a.over * b.under - b.over * a.under, a.under * b.under);

    public static Rational operator *(Rational a, Rational b) => new(a.over * b.over, a.under * b.under);

    public static Rational operator /(Rational a, Rational b) => new(a.over * b.under, a.under * b.over);
}
