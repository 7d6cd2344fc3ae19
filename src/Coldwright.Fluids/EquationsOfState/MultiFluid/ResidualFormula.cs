using Coldwright.Numerics.Scalars;

namespace Coldwright.Fluids.EquationsOfState.MultiFluid;

/// <summary>alphar(delta, tau) of a term set, written once for any scalar: the text the fast path is tested against.</summary>
public static class ResidualFormula
{
    /// <summary>Sum of all terms, dimensionless.</summary>
    /// <param name="terms">The term set.</param>
    /// <param name="delta">Reduced density rho/rho_r.</param>
    /// <param name="tau">Inverse reduced temperature T_r/T.</param>
    /// <param name="tauLimit">Beyond this the set is continued linearly in tau (<see cref="TauLimits"/>).</param>
    public static T Evaluate<T>(ResidualTerms terms, T delta, T tau, double tauLimit) where T : struct, IScalar<T>
    {
        if (tau.Value > tauLimit) return Continued(terms, delta, tau, tauLimit);
        var sum = T.From(0);
        var logTau = T.Log(tau);
        var p = terms.Power;
        for (int i = 0; i < p.N.Length; i++)
        {
            var exponent = p.T[i] * logTau;
            if (p.L[i] != 0) exponent -= p.G[i] * T.Pow(delta, p.L[i]);
            if (p.M[i] != 0) exponent -= T.Pow(tau, p.M[i]);
            sum += p.N[i] * (T.Pow(delta, p.D[i]) * T.Exp(exponent));
        }
        var g = terms.Gaussian;
        for (int i = 0; i < g.N.Length; i++)
        {
            var dd = delta + -g.Epsilon[i];
            var dt = tau + -g.GammaTau[i];
            var exponent = g.T[i] * logTau - g.Eta[i] * (dd * dd) - g.BetaDelta[i] * (delta + -g.GammaDelta[i]) - g.BetaTau[i] * (dt * dt);
            sum += g.N[i] * (T.Pow(delta, g.D[i]) * T.Exp(exponent));
        }
        for (int i = 0; i < terms.NonAnalytic.N.Length; i++) sum += NonAnalytic(terms.NonAnalytic, i, delta, tau);
        return sum;
    }

    // each term's tau factor c(tau) replaced by c(tau*) + (tau - tau*) c'(tau*); the non-analytic terms are long zero there
    private static T Continued<T>(ResidualTerms terms, T delta, T tau, double limit) where T : struct, IScalar<T>
    {
        var sum = T.From(0);
        double logLimit = Math.Log(limit);
        var beyond = (1 / limit) * tau + -1.0;
        var p = terms.Power;
        for (int i = 0; i < p.N.Length; i++)
        {
            double tm = p.M[i] != 0 ? Math.Pow(limit, p.M[i]) : 0;
            double c = p.N[i] * Math.Exp(p.T[i] * logLimit - tm), q = p.T[i] - p.M[i] * tm;
            var shape = T.Pow(delta, p.D[i]);
            if (p.L[i] != 0) shape *= T.Exp(-(p.G[i] * T.Pow(delta, p.L[i])));
            sum += shape * (c * q * beyond + c);
        }
        var g = terms.Gaussian;
        for (int i = 0; i < g.N.Length; i++)
        {
            double dt = limit - g.GammaTau[i];
            double c = g.N[i] * Math.Exp(g.T[i] * logLimit - g.BetaTau[i] * dt * dt), q = g.T[i] - 2 * g.BetaTau[i] * limit * dt;
            var dd = delta + -g.Epsilon[i];
            var shape = T.Pow(delta, g.D[i]) * T.Exp(-(g.Eta[i] * (dd * dd)) - g.BetaDelta[i] * (delta + -g.GammaDelta[i]));
            sum += shape * (c * q * beyond + c);
        }
        return sum;
    }

    /// <summary>
    /// Term i of Span and Wagner's non-analytic set: n Delta^b delta psi with theta = (1-tau) + A ((delta-1)^2)^(1/(2 beta)),
    /// Delta = theta^2 + B ((delta-1)^2)^a, psi = exp(-C (delta-1)^2 - D (tau-1)^2).
    /// </summary>
    public static T NonAnalytic<T>(NonAnalyticTerms terms, int i, T delta, T tau) where T : struct, IScalar<T>
    {
        var d1 = delta + -1.0;
        // the derivatives have no limit at delta = 1; a shift of 1e-9 is far below every stated uncertainty
        if (Math.Abs(d1.Value) < 1e-9) d1 = d1 + (d1.Value < 0 ? -1e-9 : 1e-9);
        var t1 = tau + -1.0;
        var square = d1 * d1;
        var theta = terms.A[i] * T.Pow(square, 1 / (2 * terms.Beta[i])) - t1;
        var distance = theta * theta + terms.B[i] * T.Pow(square, terms.SmallA[i]);
        var psi = T.Exp(-(terms.C[i] * square) - terms.D[i] * (t1 * t1));
        return terms.N[i] * (T.Pow(distance, terms.SmallB[i]) * (delta * psi));
    }
}
