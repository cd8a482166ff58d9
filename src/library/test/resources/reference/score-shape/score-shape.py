# Shape of published scores: made score-shape.csv (Python 3.11, pandas 1.5, run in src/library/test/resources/reference).
import pandas as pd, numpy as np


def shape(name, df, person, product, attributes, width):
    df = df[[person, product] + attributes].dropna()
    correlated, rows = [], []
    for a in attributes:
        y = df[a].astype(float)
        within = y - df.groupby(product)[a].transform("mean")
        rest = within - within.groupby(df[person]).transform("mean")
        between = max(0, within.groupby(df[person]).mean().var() - rest.var() / df.groupby(person).size().mean())
        spread = rest.groupby(df[person]).std()
        cells = df.groupby([person, product])[a]
        repeated = cells.size() > 1
        rows.append((between / (between + rest.var()), y.std() / width, spread.std() / spread.mean(),
                     cells.var()[repeated].mean() / rest.var() if repeated.any() else np.nan))
        correlated.append(rest)
    r = np.corrcoef(correlated) if len(attributes) > 1 else np.eye(1)
    upper = np.abs(r[np.triu_indices(len(attributes), 1)])
    halo = upper.mean() if len(upper) else np.nan
    print(name, *["%.9f" % v for v in np.mean(rows, axis=0)], "%.9f" % halo, sep=",")


print("panel,person share,spread,unevenness,repeat,halo")
carrots = pd.read_csv("lme4/carrots.csv")
shape("carrots", carrots, "Consumer", "Product", ["Preference", "Sweetness", "Bitter", "Crisp"], 6)
ham = pd.read_csv("lme4/ham.csv")
shape("ham", ham, "Consumer", "Product", ["Informed.liking"], 8)
tv = pd.read_csv("lme4/TVbo.csv")
tv["made"] = tv.TVset + tv.Picture.astype(str)
shape("TVbo", tv, "Assessor", "made", list(tv.columns[4:19]), 15)
wine = pd.read_csv("ordinal/wine.csv")
wine["made"] = wine.temp + wine.contact
shape("wine", wine, "judge", "made", ["response"], 100)
