namespace HotShop.Monitor.Money;

/// <summary>Digits after the point of a currency's smallest unit. Two, except for those listed.</summary>
/// <remarks>Source: ISO 4217, list one, column "minor unit".</remarks>
static class CurrencyDigits
{
    static readonly HashSet<string> none =
        ["BIF", "CLP", "DJF", "GNF", "ISK", "JPY", "KMF", "KRW", "PYG", "RWF", "UGX", "VND", "VUV", "XAF", "XOF", "XPF"];

    static readonly HashSet<string> three = ["BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"];

    public static int Of(string currency) => none.Contains(currency) ? 0 : three.Contains(currency) ? 3 : 2;
}
