namespace HotShop.Physics.Glass;

/// <summary>The shape of a piece or a gather, for its mass. Sizes in metres.</summary>
public abstract record PieceShape
{
    PieceShape() { }

    /// <summary>Volume of glass, m³.</summary>
    public double CubicMetres => Volume();

    /// <summary>Mass, kg.</summary>
    /// <param name="kilogramsPerCubicMetre">Of cold glass for a piece, of the melt for a gather: a gather is some 6 % larger.</param>
    public double Kilograms(double kilogramsPerCubicMetre) => Require.Positive(kilogramsPerCubicMetre) * CubicMetres;

    private protected abstract double Volume();

    /// <summary>A solid ball: a gather, an egg, a float without its bubble.</summary>
    public sealed record Ball(double DiameterMetres) : PieceShape
    {
        public double DiameterMetres { get; } = Require.Positive(DiameterMetres);

        /// <summary>The ball of a mass.</summary>
        public static Ball OfKilograms(double kilograms, double kilogramsPerCubicMetre) =>
            new(2 * Math.Cbrt(Require.NotNegative(kilograms) / Require.Positive(kilogramsPerCubicMetre) * 3 / (4 * Math.PI)));

        private protected override double Volume() => BallCubicMetres(DiameterMetres);
    }

    /// <summary>A solid rod, slab or disc.</summary>
    public sealed record Cylinder(double DiameterMetres, double HeightMetres) : PieceShape
    {
        public double DiameterMetres { get; } = Require.Positive(DiameterMetres);

        public double HeightMetres { get; } = Require.Positive(HeightMetres);

        private protected override double Volume() => ConeCubicMetres(DiameterMetres, DiameterMetres, HeightMetres);
    }

    /// <summary>A solid cone, cut off where the upper diameter is above 0.</summary>
    public sealed record Cone(double BottomDiameterMetres, double TopDiameterMetres, double HeightMetres) : PieceShape
    {
        public double BottomDiameterMetres { get; } = Require.NotNegative(BottomDiameterMetres);

        public double TopDiameterMetres { get; } = Require.NotNegative(TopDiameterMetres);

        public double HeightMetres { get; } = Require.Positive(HeightMetres);

        private protected override double Volume() => ConeCubicMetres(BottomDiameterMetres, TopDiameterMetres, HeightMetres);
    }

    /// <summary>A paperweight: the cap of a ball on a flat base.</summary>
    public sealed record Dome(double BaseDiameterMetres, double HeightMetres) : PieceShape
    {
        public double BaseDiameterMetres { get; } = Require.NotNegative(BaseDiameterMetres);

        public double HeightMetres { get; } = Require.Positive(HeightMetres);

        private protected override double Volume() =>
            Math.PI * HeightMetres * (3 * BaseDiameterMetres * BaseDiameterMetres / 4 + HeightMetres * HeightMetres) / 6;
    }

    /// <summary>A blown ball with an even wall: an ornament, a float, the body of a vase.</summary>
    public sealed record BlownBall(double OuterDiameterMetres, double WallMetres) : PieceShape
    {
        public double OuterDiameterMetres { get; } = Require.Positive(OuterDiameterMetres);

        public double WallMetres { get; } = InnerOf(OuterDiameterMetres, WallMetres) >= 0 ? WallMetres : throw TooThick(WallMetres);

        private protected override double Volume() => BallCubicMetres(OuterDiameterMetres) - BallCubicMetres(InnerOf(OuterDiameterMetres, WallMetres));
    }

    /// <summary>Half of a blown ball: a bowl.</summary>
    public sealed record Bowl(double OuterDiameterMetres, double WallMetres) : PieceShape
    {
        readonly BlownBall whole = new(OuterDiameterMetres, WallMetres);

        private protected override double Volume() => whole.CubicMetres / 2;
    }

    /// <summary>A straight glass with a wall and a bottom: a tumbler, a vase.</summary>
    public sealed record Tumbler(double OuterDiameterMetres, double HeightMetres, double WallMetres, double BottomMetres) : PieceShape
    {
        public double OuterDiameterMetres { get; } = Require.Positive(OuterDiameterMetres);

        public double HeightMetres { get; } = Require.Positive(HeightMetres);

        public double WallMetres { get; } = InnerOf(OuterDiameterMetres, WallMetres) >= 0 ? WallMetres : throw TooThick(WallMetres);

        public double BottomMetres { get; } = Require.Positive(BottomMetres) <= HeightMetres ? BottomMetres : throw TooThick(BottomMetres);

        private protected override double Volume()
        {
            var inner = InnerOf(OuterDiameterMetres, WallMetres);
            return ConeCubicMetres(OuterDiameterMetres, OuterDiameterMetres, HeightMetres) - ConeCubicMetres(inner, inner, HeightMetres - BottomMetres);
        }
    }

    static double BallCubicMetres(double diameter) => Math.PI * diameter * diameter * diameter / 6;

    static double ConeCubicMetres(double bottom, double top, double height) => Math.PI * height * (bottom * bottom + bottom * top + top * top) / 12;

    static double InnerOf(double outer, double wall) => Require.Positive(outer) - 2 * Require.Positive(wall);

    static ArgumentOutOfRangeException TooThick(double metres) => new(nameof(metres), metres, "the glass is thicker than the piece");
}
