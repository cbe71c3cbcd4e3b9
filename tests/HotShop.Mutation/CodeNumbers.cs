using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace HotShop.Mutation;

/// <summary>
/// Which numbers of the code are altered: every real and decimal literal, every whole literal that the compiler turns into a real one, and every whole literal
/// that is the value of a constant, of a static table or of a parameter left out. Structure is left alone: indices, counts and steps of loops, values of
/// enums, and 0 and 1 inside a formula.
/// </summary>
static class CodeNumbers
{
    public static IEnumerable<Mutant> In(SyntaxTree tree, SemanticModel model, string file)
    {
        var seen = new Dictionary<string, int>();
        foreach (var literal in tree.GetRoot().DescendantNodes().OfType<LiteralExpressionSyntax>().Where(l => l.IsKind(SyntaxKind.NumericLiteralExpression)))
        {
            if (literal.Ancestors().Any(a => a is AttributeSyntax or EnumMemberDeclarationSyntax)) continue;
            var isValue = IsValue(literal, out var isCopied);
            if (Altered(literal.Token, model.GetTypeInfo(literal).ConvertedType?.SpecialType, isValue) is not { } now) continue;
            var place = $"{file} {Member(literal)} {literal.Token.Text}";
            seen[place] = seen.GetValueOrDefault(place) + 1;
            var id = seen[place] == 1 ? place : $"{place} #{seen[place]}";
            yield return new(id, file, tree.GetLineSpan(literal.Span).StartLinePosition.Line + 1, literal.Token.Text, now, null, literal.SpanStart, isCopied);
        }
    }

    static string? Altered(SyntaxToken token, SpecialType? type, bool isValue)
    {
        switch (token.Value)
        {
            case double value:
                return Structural(value, isValue) ? null : Alteration.Text(Alteration.Of(value));
            case float value:
                return Structural(value, isValue) ? null : Alteration.Text(Alteration.Of(value)) + "f";
            case decimal value:
                return Structural((double)value, isValue) ? null : FormattableString.Invariant($"{Alteration.Of(value)}m");
        }
        var whole = Convert.ToDouble(token.Value, System.Globalization.CultureInfo.InvariantCulture);
        return type switch
        {
            SpecialType.System_Double => Structural(whole, isValue) ? null : Alteration.Text(Alteration.Of(whole)),
            SpecialType.System_Decimal => Structural(whole, isValue) ? null : FormattableString.Invariant($"{Alteration.Of((decimal)whole)}m"),
            _ => isValue ? FormattableString.Invariant($"{whole + 1:0}") : null,
        };
    }

    /// <summary>The neutral elements: sums start at 0, products at 1, shares end at 1.</summary>
    static bool Structural(double value, bool isValue) => !isValue && value is 0 or 1;

    /// <summary>Whether a literal belongs to a value somebody chose: a constant, a static field or property, a parameter's default.</summary>
    static bool IsValue(SyntaxNode literal, out bool isCopied)
    {
        isCopied = false;
        foreach (var node in literal.Ancestors())
        {
            switch (node)
            {
                case LambdaExpressionSyntax or BracketedArgumentListSyntax or RangeExpressionSyntax:
                    return false;
                case ParameterSyntax:
                    return isCopied = true;
                case FieldDeclarationSyntax field when field.Modifiers.Any(SyntaxKind.ConstKeyword):
                    return isCopied = true;
                case LocalDeclarationStatementSyntax local:
                    return local.IsConst;
                case FieldDeclarationSyntax field:
                    return field.Modifiers.Any(SyntaxKind.StaticKeyword);
                case PropertyDeclarationSyntax property:
                    return property.Modifiers.Any(SyntaxKind.StaticKeyword) && property.Initializer is not null;
                case StatementSyntax or MemberDeclarationSyntax:
                    return false;
            }
        }
        return false;
    }

    static string Member(SyntaxNode literal)
    {
        var members = literal.Ancestors().OfType<MemberDeclarationSyntax>().Where(m => m is not BaseNamespaceDeclarationSyntax).Reverse().Select(m => m switch
        {
            BaseTypeDeclarationSyntax type => type.Identifier.Text,
            MethodDeclarationSyntax method => method.Identifier.Text,
            PropertyDeclarationSyntax property => property.Identifier.Text,
            ConstructorDeclarationSyntax => "new",
            OperatorDeclarationSyntax op => op.OperatorToken.Text,
            BaseFieldDeclarationSyntax field => field.Declaration.Variables[0].Identifier.Text,
            _ => "",
        });
        return string.Join('.', members);
    }
}
