using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace HotShop.EndToEnd.Tests.Broker;

/// <summary>A certificate authority of a studio's own, and a broker's certificate for <c>localhost</c> signed by it.</summary>
static class Certificates
{
    public static void Write(string folder)
    {
        var from = new DateTimeOffset(2026, 1, 1, 0, 0, 0, TimeSpan.Zero).AddYears(-2);
        using var authorityKey = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var authority = new CertificateRequest("CN=Quillmere test authority", authorityKey, HashAlgorithmName.SHA256);
        authority.CertificateExtensions.Add(new X509BasicConstraintsExtension(certificateAuthority: true, hasPathLengthConstraint: false, 0, critical: true));
        using var signer = authority.CreateSelfSigned(from, from.AddYears(40));

        using var brokerKey = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=localhost", brokerKey, HashAlgorithmName.SHA256);
        var names = new SubjectAlternativeNameBuilder();
        names.AddDnsName("localhost");
        request.CertificateExtensions.Add(names.Build());
        using var broker = request.Create(signer, from, from.AddYears(30), [1, 2, 3, 4]);

        File.WriteAllText(Path.Combine(folder, "ca.pem"), signer.ExportCertificatePem());
        File.WriteAllText(Path.Combine(folder, "broker.pem"), broker.ExportCertificatePem());
        File.WriteAllText(Path.Combine(folder, "broker.key"), brokerKey.ExportPkcs8PrivateKeyPem());
    }
}
