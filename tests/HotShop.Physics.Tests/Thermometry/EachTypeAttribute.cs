using System.Reflection;
using HotShop.Physics.Thermometry;
using Xunit.Sdk;
using Xunit.v3;

namespace HotShop.Physics.Tests.Thermometry;

/// <summary>One case for each thermocouple type.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class EachTypeAttribute : DataAttribute
{
    public override ValueTask<IReadOnlyCollection<Xunit.ITheoryDataRow>> GetData(MethodInfo testMethod, DisposalTracker disposalTracker) =>
        new([.. Enum.GetValues<ThermocoupleType>().Select(type => new Xunit.TheoryDataRow<ThermocoupleType>(type))]);

    public override bool SupportsDiscoveryEnumeration() => true;
}
